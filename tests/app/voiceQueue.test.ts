import { describe, expect, it } from "vitest";
import {
  ALERT_KEEPS_MS,
  emptyVoiceQueue,
  queueVoice,
  REPLY_KEEPS_MS,
  type NewItem,
  type VoiceInput,
} from "../../src/app/voiceQueue.ts";

const reply = (text: string, more: Partial<NewItem> = {}): NewItem => ({
  text,
  priority: "none",
  alertId: undefined,
  ...more,
});
/** A handover: said in parts. */
const parts = (...texts: readonly string[]): VoiceInput => ({
  kind: "say",
  items: texts.map((text) => reply(text, { isPart: true })),
  answered: true,
});
const question = (text: string): NewItem => reply(text, { asksId: text });
const alert = (text: string, priority: "high" | "medium" | "low", alertId = text, about?: string): NewItem => ({
  text,
  priority,
  alertId,
  ...(about !== undefined && { about: [about] }),
});
const tone = (priority: "high" | "medium", alertId: string): NewItem => alert("", priority, alertId);
const say = (...items: readonly NewItem[]): VoiceInput => ({ kind: "say", items });
const news = (change: Omit<Extract<VoiceInput, { kind: "say" }>, "kind" | "items">): VoiceInput => ({
  kind: "say",
  items: [],
  ...change,
});
const ended = (id: number): VoiceInput => ({ kind: "ended", id });
const userStarted: VoiceInput = { kind: "userStarted" };
const userEnded: VoiceInput = { kind: "userEnded" };

/** What comes of it, input by input: the words ("~" for a tone alone), "-" for silence, "<x" for x given back. */
function told(inputs: readonly (readonly [VoiceInput, number])[]): readonly string[] {
  let queue = emptyVoiceQueue;
  return inputs.map(([input, nowMs]) => {
    const [next, effects] = queueVoice(queue, input, nowMs);
    queue = next;
    return effects
      .map((e) => {
        if (e.kind === "unsaid") return `<${e.alertIds.join(" <")}`;
        return e.kind === "silence" ? "-" : e.item.text || "~";
      })
      .join(" ");
  });
}

describe("queueVoice", () => {
  type Row = readonly [input: VoiceInput, told: string, atMs?: number];
  const rows: readonly (readonly [string, readonly Row[]])[] = [
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
        [news({ withdrawn: ["l"] }), ""],
        [ended(1), ""],
      ],
    ],
    [
      "withdraws what sounds, and goes on",
      [
        [say(alert("m", "medium"), reply("r")), "m"],
        [news({ withdrawn: ["m"] }), "- r"],
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
    [
      "lets a high alert that was talked over wait until the user is done, whatever is said meanwhile",
      [
        [say(alert("h", "high")), "h"],
        [userStarted, "-"],
        [say(reply("r")), ""],
        [say(alert("k", "high")), "k"],
        [ended(3), ""],
        [userEnded, "h"],
        [ended(1), "r"],
      ],
    ],
    [
      "asks again what a high alert cut off",
      [
        [say(question("q")), "q"],
        [say(alert("h", "high")), "- h"],
        [ended(2), "q"],
      ],
    ],
    [
      "asks nothing again that was answered meanwhile",
      [
        [say(question("q")), "q"],
        [say(alert("h", "high")), "- h"],
        [news({ closed: ["q"] }), ""],
        [ended(2), ""],
      ],
    ],
    [
      "asks again what noise talked over, and not what its answer did",
      [
        [say(question("q")), "q"],
        [userStarted, "-"],
        [userEnded, "q"],
        [userStarted, "-"],
        [{ kind: "say", items: [reply("r")], closed: ["q"] }, ""],
        [userEnded, "r"],
        [ended(2), ""],
      ],
    ],
    [
      "says nothing a fourth time that was talked over thrice, as our own voice in the microphone would",
      [
        [say(alert("h", "high"), alert("m", "medium")), "h"],
        [userStarted, "-"],
        [userEnded, "h"],
        [userStarted, "-"],
        [userEnded, "h"],
        [userStarted, "-"],
        [userEnded, "m"],
      ],
    ],
    [
      "says the newer of two questions",
      [
        [say(question("q")), "q"],
        [say(alert("h", "high")), "- h"],
        [say(question("p")), ""],
        [ended(2), "p"],
        [ended(3), ""],
      ],
    ],
    [
      "drops a reply that waits when its number is replaced",
      [
        [say(alert("m", "medium"), reply("map 65", { about: ["map"] })), "m"],
        [news({ outdated: ["map"] }), ""],
        [ended(1), ""],
      ],
    ],
    [
      "cuts words off when their number is replaced, and gives the alert back",
      [
        [say(alert("map 65", "high", "m", "map"), reply("r")), "map 65"],
        [news({ outdated: ["map"] }), "<m - r"],
      ],
    ],
    [
      "gives back an alert that waits when its number is replaced, but not where newer words come with it",
      [
        [say(reply("r"), alert("spo2 88", "low", "s", "spo2"), alert("map 65", "low", "m", "map")), "r"],
        [{ kind: "say", items: [alert("map 60", "low", "m", "map")], outdated: ["map", "spo2"] }, "<s"],
        [ended(1), "map 60"],
        [ended(4), ""],
      ],
    ],
    [
      "says nothing of what is withdrawn and outdated at once",
      [
        [say(reply("r"), alert("map 65", "low", "m", "map")), "r"],
        [news({ outdated: ["map"], withdrawn: ["m"] }), ""],
        [ended(1), ""],
      ],
    ],
    [
      "drops a reply that has waited too long, and keeps a question",
      [
        [say(alert("h", "high"), reply("r")), "h"],
        [ended(1), "", REPLY_KEEPS_MS + 1],
        [say(alert("h", "high"), question("q")), "h", REPLY_KEEPS_MS + 2],
        [ended(3), "q", 3 * REPLY_KEEPS_MS],
      ],
    ],
    [
      "gives back an alert that has waited too long, and says what has no number",
      [
        [say(alert("h", "high"), alert("map 65", "medium", "m", "map"), alert("plain", "medium")), "h"],
        [ended(1), "<m plain", ALERT_KEEPS_MS + 1],
      ],
    ],
    [
      "says what has waited just long enough",
      [
        [say(alert("h", "high"), alert("map 65", "medium", "m", "map"), reply("r")), "h"],
        [ended(1), "map 65", REPLY_KEEPS_MS],
        [ended(2), "r", REPLY_KEEPS_MS],
      ],
    ],
    [
      "says parts one after another, a medium alert between them and a low one after them",
      [
        [parts("a", "b", "c"), "a"],
        [say(alert("l", "low"), alert("m", "medium")), ""],
        [ended(1), "m"],
        [ended(5), "b"],
        [ended(2), "c"],
        [ended(3), "l"],
      ],
    ],
    [
      "says the part again that a high alert or a sound without words cut off, and goes on",
      [
        [parts("a", "b"), "a"],
        [say(alert("h", "high")), "- h"],
        [ended(3), "a"],
        [userStarted, "-"],
        [userEnded, "a"],
        [ended(1), "b"],
      ],
    ],
    [
      "ends all parts with an answer, silent or not, whether one sounds or waits",
      [
        [parts("a", "b"), "a"],
        [news({ answered: true }), "-"],
        [parts("c", "d"), "c"],
        [userStarted, "-"],
        [{ kind: "say", items: [reply("r")], answered: true }, ""],
        [userEnded, "r"],
        [ended(5), ""],
      ],
    ],
    [
      "is not led away from its parts by a step that nobody asked for: it comes after them",
      [
        [parts("a", "b"), "a"],
        [say(question("step")), ""],
        [ended(1), "b"],
        [ended(2), "step"],
      ],
    ],
    [
      "ends all parts where one was talked over thrice, and where somebody talked for long",
      [
        [parts("a", "b"), "a"],
        [userStarted, "-"],
        [userEnded, "a"],
        [userStarted, "-"],
        [userEnded, "a"],
        [userStarted, "-"],
        [userEnded, ""],
        [parts("c", "d"), "c", 1],
        [userStarted, "-", 2],
        [userEnded, "c", 2 + REPLY_KEEPS_MS],
        [userStarted, "-", 3 + REPLY_KEEPS_MS],
        [userEnded, "", 4 + 2 * REPLY_KEEPS_MS],
      ],
    ],
    [
      "says the older of two equals first",
      [
        [say(reply("r"), alert("a", "low"), alert("b", "low")), "r"],
        [ended(1), "a"],
        [ended(2), "b"],
      ],
    ],
    [
      "sounds a tone alone, and goes on when it has ended",
      [
        [say(tone("high", "h"), reply("r")), "~"],
        [ended(1), "r"],
      ],
    ],
    [
      "keeps the words of an alert that a tone alone comes after, unless the tone is more urgent",
      [
        [say(reply("r"), alert("m", "medium", "x")), "m"],
        [say(tone("medium", "x")), ""],
        [say(tone("high", "x")), "- ~"],
        [ended(3), "r"],
      ],
    ],
    [
      "sounds the tone alone where the words it comes after are outdated",
      [
        [say(reply("r"), alert("map 65", "low", "m", "map")), "r"],
        [{ kind: "say", items: [alert("", "low", "m", "map")], outdated: ["map"] }, ""],
        [ended(1), "~"],
      ],
    ],
  ];
  it.each(rows)("%s", (_name, steps) => {
    expect(told(steps.map(([input, , atMs = 0]) => [input, atMs]))).toEqual(steps.map(([, expected]) => expected));
  });
});
