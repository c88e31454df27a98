import { describe, expect, it } from "vitest";
import { emptyVoiceQueue, queueVoice, type QueueItem, type VoiceInput } from "../../src/app/voiceQueue.ts";

type Words = Omit<QueueItem, "id">;
const reply = (text: string): Words => ({ text, priority: "none", alertId: undefined });
const alert = (text: string, priority: "high" | "medium" | "low", alertId = text): Words => ({
  text,
  priority,
  alertId,
});
const say = (...items: readonly Words[]): VoiceInput => ({ kind: "say", items });
const ended = (id: number): VoiceInput => ({ kind: "ended", id });
const userStarted: VoiceInput = { kind: "userStarted" };
const userEnded: VoiceInput = { kind: "userEnded" };

/** What the speaker is told, input by input: the words, or "-" for silence. */
function told(inputs: readonly VoiceInput[]): readonly string[] {
  let queue = emptyVoiceQueue;
  return inputs.map((input) => {
    const [next, effects] = queueVoice(queue, input);
    queue = next;
    return effects.map((e) => (e.kind === "silence" ? "-" : e.item.text)).join(" ");
  });
}

describe("queueVoice", () => {
  const rows: readonly (readonly [string, readonly (readonly [VoiceInput, string])[]])[] = [
    ["says a reply at once", [[say(reply("a")), "a"]]],
    [
      "says one thing after the other",
      [
        [say(alert("a", "medium"), reply("b")), "a"],
        [ended(1), "b"],
        [ended(2), ""],
      ],
    ],
    [
      "says high before medium before a reply before low, whatever came first",
      [
        [say(reply("r"), alert("l", "low"), alert("m", "medium"), alert("h", "high")), "h"],
        [ended(4), "m"],
        [ended(3), "r"],
        [ended(1), "l"],
      ],
    ],
    [
      "lets a high alert cut in, and a reply that was cut off is gone",
      [
        [say(reply("r")), "r"],
        [say(alert("h", "high")), "- h"],
        [ended(2), ""],
      ],
    ],
    [
      "says an alert again that a high one cut off",
      [
        [say(alert("m", "medium")), "m"],
        [say(alert("h", "high")), "- h"],
        [ended(2), "m"],
      ],
    ],
    [
      "does not cut one high alert off with another",
      [
        [say(alert("h", "high")), "h"],
        [say(alert("k", "high")), ""],
        [ended(1), "k"],
      ],
    ],
    [
      "replaces a reply by the newer one",
      [
        [say(reply("a")), "a"],
        [say(reply("b")), "- b"],
        [ended(2), ""],
      ],
    ],
    [
      "replaces the wording of an alert that waits",
      [
        [say(reply("r")), "r"],
        [say(alert("old", "medium", "x")), ""],
        [say(alert("new", "medium", "x")), ""],
        [ended(1), "new"],
        [ended(3), ""],
      ],
    ],
    [
      "replaces the wording of an alert that sounds",
      [
        [say(alert("old", "medium", "x")), "old"],
        [say(alert("new", "medium", "x")), "- new"],
        [ended(2), ""],
      ],
    ],
    [
      "withdraws what waits",
      [
        [say(reply("r"), alert("l", "low")), "r"],
        [{ kind: "withdraw", alertIds: ["l"] }, ""],
        [ended(1), ""],
      ],
    ],
    [
      "withdraws what sounds, and goes on",
      [
        [say(alert("m", "medium"), reply("r")), "m"],
        [{ kind: "withdraw", alertIds: ["m"] }, "- r"],
      ],
    ],
    [
      "falls silent when the user talks, and a reply is gone",
      [
        [say(reply("r")), "r"],
        [userStarted, "-"],
        [userEnded, ""],
      ],
    ],
    [
      "says an alert again that the user talked over",
      [
        [say(alert("m", "medium")), "m"],
        [userStarted, "-"],
        [userEnded, "m"],
      ],
    ],
    [
      "falls silent during a high alert too, and says it again afterwards",
      [
        [say(alert("h", "high")), "h"],
        [userStarted, "-"],
        [userStarted, ""],
        [userEnded, "h"],
      ],
    ],
    [
      "lets a high alert start while the user talks, and nothing else",
      [
        [userStarted, ""],
        [say(reply("r"), alert("m", "medium")), ""],
        [say(alert("h", "high")), "h"],
        [ended(3), ""],
        [userEnded, "m"],
      ],
    ],
    [
      "ignores the end of something else",
      [
        [say(reply("r"), alert("l", "low")), "r"],
        [ended(99), ""],
        [ended(1), "l"],
      ],
    ],
    [
      "does not take what was silenced for what sounds now",
      [
        [say(alert("m", "medium")), "m"],
        [say(alert("h", "high")), "- h"],
        [ended(1), ""],
        [ended(2), "m"],
      ],
    ],
  ];
  it.each(rows)("%s", (_name, steps) => {
    expect(told(steps.map(([input]) => input))).toEqual(steps.map(([, expected]) => expected));
  });
});
