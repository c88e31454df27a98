import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url));
const html = read("index.html").toString();

describe("index.html", () => {
  it("is British English and can be zoomed", () => {
    expect(html).toMatch(/<html lang="en-GB">/);
    expect(html).not.toMatch(/user-scalable|maximum-scale/);
  });

  it("has nothing inline that the content security policy would refuse, and nothing from elsewhere", () => {
    expect(html.match(/<script(?![^>]*\bsrc=)/g)).toBeNull();
    expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
    expect(html).not.toMatch(/(?:src|href)="(?!\/)/);
  });
});

/** Width and height of a PNG, from its header. Source: W3C, PNG Specification, section 11.2.1 IHDR. */
const pngSizePx = (png: Buffer) => [png.readUInt32BE(16), png.readUInt32BE(20)];

it.each([
  { icon: "public/icons/tragus-192.png", sizePx: 192 },
  { icon: "public/icons/tragus-512.png", sizePx: 512 },
  { icon: "public/icons/tragus-maskable-512.png", sizePx: 512 },
])("$icon has the size the manifest declares", ({ icon, sizePx }) => {
  expect(read("vite.config.ts").toString()).toContain(
    `"/${icon.replace("public/", "")}", sizes: "${sizePx}x${sizePx}"`,
  );
  expect(pngSizePx(read(icon))).toEqual([sizePx, sizePx]);
});
