import axe from "axe-core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { fullCase, PrintedCase } from "../export/printed/printedCase.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readPdf } from "./readPdf.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

type Axe = typeof axe;

/** Paper with what its margins of 14 mm leave, CSS pixels. ISO 216; ANSI Y14.1 for Letter. */
const PAPERS = [
  { format: "A4", widthPx: ((210 - 28) / 25.4) * 96, pointsWide: (210 / 25.4) * 72, pointsHigh: (297 / 25.4) * 72 },
  { format: "Letter", widthPx: (8.5 - 28 / 25.4) * 96, pointsWide: 8.5 * 72, pointsHigh: 11 * 72 },
] as const;

const SMALLEST_PX = 12; // 9 pt

describe("the printed record", () => {
  let served: Served;
  let opened: OpenedPage;
  let paper: Page;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    paper = await opened.context.newPage();
    await paper.emulateMedia({ media: "print" });
    await vi.waitFor(() => expect(opened.page.locator("main").count()).resolves.toBe(1), { timeout: 60_000 });
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  const longToken = "x".repeat(400);
  const hostile = (): string => {
    const c = new PrintedCase();
    const heard = `</td></table><img src=x onerror="document.title='taken'"><script>document.title='taken'</script>${longToken}`;
    c.add({ type: "fluid.given", fluidId: heard, volumeMl: 250, heard, by: "typed" });
    c.add({ type: "step.answered", stepId: heard, answer: "waived", reason: heard, heard, by: "typed" });
    c.add({ type: "speech.started", text: heard, priority: "low" });
    return c.html({ label: heard });
  };

  it("is taken for what it says by a real parser: nothing that was heard becomes an element", async () => {
    await paper.setContent(hostile());
    const found = await paper.evaluate(() => ({
      elements: document.querySelectorAll("script, img").length,
      title: document.title.includes("onerror"),
      tables: [...document.querySelectorAll("table")].every((table) => table.closest("main.record") !== null),
    }));
    expect(found).toEqual({ elements: 0, title: true, tables: true });
  });

  const documents = [
    { name: "a full case", html: () => fullCase().html() },
    { name: "a rehearsal", html: () => fullCase().html({ rehearsal: true }) },
    { name: "a hostile case", html: hostile },
  ];

  it.each(PAPERS.flatMap((paperSize) => documents.map((document) => ({ ...paperSize, ...document }))))(
    "lets nothing of $name be wider than $format, nor smaller than 9 pt",
    async ({ widthPx, html }) => {
      await paper.setViewportSize({ width: Math.floor(widthPx), height: 1000 });
      await paper.setContent(html());
      const measured = await paper.evaluate(() => {
        const letters = [...document.querySelectorAll("body *")].filter((element) =>
          [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== ""),
        );
        const scaleOf = (element: Element) =>
          element instanceof SVGGraphicsElement ? (element.getScreenCTM()?.a ?? 0) : 1;
        const boxes = [...document.querySelectorAll("body *:not(defs *, .across, .across *, clipPath, clipPath *)")];
        return {
          smallest: Math.min(
            ...letters.map((element) => parseFloat(getComputedStyle(element).fontSize) * scaleOf(element)),
          ),
          furthest: Math.max(
            ...boxes
              // What is clipped cannot be cut by the paper.
              .filter((element) => element.closest("[clip-path]") === null)
              .map((element) => element.getBoundingClientRect().right),
          ),
          nearest: Math.min(
            ...boxes.filter((e) => e.closest("[clip-path]") === null).map((e) => e.getBoundingClientRect().left),
          ),
          letters: letters.length,
        };
      });
      expect(measured.letters).toBeGreaterThan(20);
      expect(measured.furthest).toBeLessThanOrEqual(widthPx);
      expect(measured.nearest).toBeGreaterThanOrEqual(-1);
      expect(measured.smallest).toBeGreaterThanOrEqual(SMALLEST_PX - 0.01);
    },
  );

  it("has no violation of axe's rules for WCAG 2.2 A and AA", async () => {
    await paper.setContent(fullCase().html({ rehearsal: true }));
    await paper.evaluate(axe.source);
    const found = await paper.evaluate(async () => {
      const { axe } = window as unknown as { axe: Axe };
      const result = await axe.run({
        runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "cat.color"] },
      });
      return result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.target.join(" ")).join(", ")}`);
    });
    expect(found).toEqual([]);
  });

  describe("the plot, read back by its own printed axes", () => {
    type Mark = { readonly of: string; readonly atMin: number; readonly value: number; readonly perPx: number };
    let marks: readonly Mark[];

    beforeAll(async () => {
      await paper.setContent(fullCase().html());
      marks = await paper.evaluate(() =>
        [...document.querySelectorAll("figure svg")].flatMap((svg) => {
          const texts = [...svg.querySelectorAll("text")];
          const place = (text: Element) => ({
            x: Number(text.getAttribute("x")),
            y: Number(text.getAttribute("y")),
            says: text.textContent ?? "",
          });
          const hours = texts.map(place).filter(({ says }) => /^\d\d:\d\d$/.test(says));
          const minutes = hours.map(({ x, says }) => ({
            x,
            min: Number(says.slice(0, 2)) * 60 + Number(says.slice(3)),
          }));
          const [left, right] = [minutes[0]!, minutes.at(-1)!];
          const ticks = texts.filter((text) => text.classList.contains("tick")).map(place);
          // Ticks go up a panel; where the next is lower on paper, another panel begins.
          const panels: (typeof ticks)[] = [];
          for (const tick of ticks) {
            const last = panels.at(-1)?.at(-1);
            if (last !== undefined && tick.y < last.y) panels.at(-1)!.push(tick);
            else panels.push([tick]);
          }
          return [...svg.querySelectorAll("use")].map((use) => {
            const [x, y] = [Number(use.getAttribute("x")), Number(use.getAttribute("y"))];
            const panel = panels.find((one) => y <= one[0]!.y + 1 && y >= one.at(-1)!.y - 9)!;
            const [low, high] = [panel[0]!, panel.at(-1)!];
            const perPx = (Number(high.says) - Number(low.says)) / (low.y - high.y);
            return {
              of: use.getAttribute("href")!.replace("#r-", ""),
              atMin: left.min + ((x - left.x) / (right.x - left.x)) * (right.min - left.min),
              // The baseline of a tick's number stands 4 px below its line.
              value: Number(low.says) + (low.y - 4 - y) * perPx,
              perPx,
            };
          });
        }),
      );
    });

    const OPENED_MIN = 14 * 60 + 2;
    it.each<[string, readonly (readonly [s: number, value: number])[]]>([
      [
        "sbp",
        [
          [60, 130],
          [240, 110],
          [600, 120],
          [2400, 140],
        ],
      ],
      // Means of a cuff: diastolic and a third of the pulse pressure.
      [
        "map",
        [
          [60, 90],
          [240, 70],
          [400, 60],
          [450, 84],
          [600, 80],
          [2400, 100],
          [5400, 91],
        ],
      ],
      [
        "cpp",
        [
          [450, 66],
          [600, 62],
          [2400, 78],
        ],
      ],
      [
        "spo2",
        [
          [60, 96],
          [240, 92],
          [400, 88],
          [2400, 97],
        ],
      ],
      [
        "etco2",
        [
          [450, 38],
          [600, 33],
          [2400, 36],
        ],
      ],
    ])("has every %s where and what it was said, to half a pixel, and no other", (code, said) => {
      const found = marks.filter(({ of }) => of === code).toSorted((a, b) => a.atMin - b.atMin);
      expect(found).toHaveLength(said.length);
      found.forEach(({ atMin, value, perPx }, i) => {
        const [s, wanted] = said[i]!;
        expect(Math.abs(value - wanted)).toBeLessThanOrEqual(perPx / 2);
        // Half a pixel of half an hour on 486 px.
        expect(Math.abs(atMin - (OPENED_MIN + s / 60))).toBeLessThanOrEqual((30 / 486) * 0.5 + 1e-9);
      });
    });

    it("joins no two readings over a gap, and shades it", async () => {
      const lines = await paper.evaluate(() =>
        [...document.querySelectorAll("figure polyline")].map((line) => line.getAttribute("points")!.split(" ").length),
      );
      // Each run is drawn once in each strip it touches: SBP 60–600 s, MAP 60–600 s and so on; readings at 2400 and 5400 s stand alone.
      expect(Math.max(...lines)).toBe(5);
      expect(await paper.locator("figure .gap").count()).toBeGreaterThan(3);
      expect(await paper.getByText(/no reading for 30 min/u).count()).toBeGreaterThan(0);
    });
  });

  it.each(PAPERS)(
    "prints on $format: heads again on each page, pages numbered, a rehearsal marked on each",
    async ({ format, pointsWide, pointsHigh }) => {
      await paper.setContent(fullCase().html({ rehearsal: true }));
      const pages = readPdf(await paper.pdf({ format }));
      expect(pages.length).toBeGreaterThan(3);
      expect(pages.length).toBeLessThan(12);
      pages.forEach(({ text, widthPt, heightPt }, i) => {
        expect(Math.abs(widthPt - pointsWide)).toBeLessThan(1);
        expect(Math.abs(heightPt - pointsHigh)).toBeLessThan(1);
        const flat = text.replace(/\s+/gu, " ");
        expect(flat).toContain(`Page ${i + 1} of ${pages.length}`);
        expect(flat).toContain("REHEARSAL: no patient");
        expect(flat).toContain("Tragus, case kilo four seven");
      });
      const whole = pages
        .map(({ text }) => text)
        .join("\n")
        .replace(/\s+/gu, " ");
      for (const wanted of [
        "SBP 210 mmHg",
        "WAIVED: no time",
        "26.3 mL/h",
        "NOT CONFIRMED",
        "at least",
        "CPP if ICP is",
      ])
        expect(whole).toContain(wanted);
      expect(whole.match(/Step Challenge Answer Time/gu)!.length).toBeGreaterThan(3);
    },
  );

  describe("from the page", () => {
    const send = async (line: string, shows: RegExp): Promise<void> => {
      const { page } = opened;
      await page.getByRole("textbox", { name: "Type instead of speaking" }).fill(line);
      await page.keyboard.press("Enter");
      await vi.waitFor(() => expect(page.innerText("body")).resolves.toMatch(shows), { timeout: 10_000 });
    };
    const printed = async (): Promise<string> => {
      const pages = readPdf(await opened.page.pdf({ format: "A4" }));
      return pages
        .map(({ text }) => text)
        .join("\n")
        .replace(/\s+/gu, " ");
    };

    it("the browser's own print gives the record and nothing of the screen, also without a network", async () => {
      await send("one ten over sixty", /110\/60/u);
      await expect.poll(printed, { timeout: 60_000 }).toContain("record of case");
      await opened.context.setOffline(true);
      expect(await printed()).toContain("record of case");
      const text = await printed();
      expect(text).toContain("SBP 110 mmHg");
      expect(text).toContain("“one ten over sixty”");
      expect(text).toMatch(/Page 1 of \d/u);
      expect(text).not.toContain("You can say");
      await opened.context.setOffline(false);
    });

    it("has the record's own style under the content security policy, and leaves nothing behind", async () => {
      const { page } = opened;
      const state = () =>
        page.evaluate(() => ({
          records: document.querySelectorAll(".record").length,
          sheets: document.adoptedStyleSheets.length,
        }));
      expect(await state()).toEqual({ records: 0, sheets: 0 });
      await page.emulateMedia({ media: "print" });
      await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
      expect(await state()).toEqual({ records: 1, sheets: 1 });
      const look = await page.evaluate(() => {
        const record = document.querySelector(".record")!;
        const heading = record.querySelector("h1")!;
        return {
          size: getComputedStyle(heading).fontSize,
          ink: getComputedStyle(record).color,
          page: document.getElementById("root")!.getClientRects().length,
        };
      });
      // 17 pt
      expect(parseFloat(look.size)).toBeCloseTo((17 / 72) * 96, 1);
      expect([look.ink, look.page]).toEqual(["rgb(0, 0, 0)", 0]);
      await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
      expect(await state()).toEqual({ records: 0, sheets: 0 });
      await page.emulateMedia({ media: null });
    });

    it("the button prints and tells that what comes of it lies outside", async () => {
      const { page } = opened;
      await page.evaluate(() => {
        window.print = () => Object.assign(window, { asked: true });
      });
      await page.getByText("Record", { exact: true }).click();
      await page.getByRole("button", { name: "Print the record" }).click();
      await expect.poll(() => page.innerText("body")).toContain("lies outside Tragus from now on");
      expect(await page.evaluate(() => (window as unknown as { asked?: boolean }).asked)).toBe(true);
    });

    it("prints the protocol while the protocol is read", async () => {
      const { page } = opened;
      await page.getByRole("button", { name: "Protocol", exact: true }).click();
      await page.getByText("Nothing differs from the bundled example.").waitFor({ timeout: 30_000 });
      const text = await printed();
      expect(text).toContain("Nothing differs from the bundled example.");
      expect(text).not.toContain("record of case");
      await page.getByRole("button", { name: "Back to the case" }).click();
    });

    it("throws nothing, breaks no policy and asks for nothing beyond its origin", () => {
      expect([
        opened.errors.filter((error) => !/ERR_INTERNET_DISCONNECTED/u.test(error)),
        opened.strayRequests,
      ]).toEqual([[], []]);
    });
  });
});
