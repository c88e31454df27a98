import { generateKeyPairSync, sign } from "node:crypto";
import { describe, expect, it } from "vitest";
import { signaturesHere } from "../../src/adapters/files/webCrypto.ts";
import type { ProtocolStore, ProtocolStoreError, StoredProtocol } from "../../src/app/ports.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { bundledProtocol, type ChosenFile } from "../../src/app/protocolFile.ts";
import { ProtocolChoice } from "../../src/app/protocolFileChoice.ts";
import { fail, ok, type Result } from "../../src/core/result.ts";
import { minimalProtocol } from "../protocol/fixtures/minimalProtocol.ts";

const here = signaturesHere();
const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

class FakeStore implements ProtocolStore {
  stored: StoredProtocol = {};
  error: ProtocolStoreError | undefined;
  #settle<T>(value: T): Promise<Result<T, ProtocolStoreError>> {
    return Promise.resolve(this.error === undefined ? ok(value) : fail(this.error));
  }
  load = () => this.#settle(this.stored);
  save = (stored: StoredProtocol) => {
    if (this.error === undefined) this.stored = stored;
    return this.#settle(undefined);
  };
  clear = () => this.save({});
}

function signer() {
  const { publicKey, privateKey } = generateKeyPairSync("ed25519");
  const pem = publicKey.export({ type: "spki", format: "pem" }).toString();
  const signed = (file: ChosenFile): ChosenFile => ({
    name: `${file.name}.sig`,
    bytes: new Uint8Array(sign(null, file.bytes, privateKey)),
  });
  return { pem, key: { name: "owner.pem", bytes: encode(pem) }, signed };
}

const file: ChosenFile = { name: "ours.json", bytes: encode(JSON.stringify(minimalProtocol())) };
const bad: ChosenFile = { name: "bad.json", bytes: encode('{"schema": 2}') };
const owner = signer();

async function begun(store = new FakeStore()) {
  const choice = new ProtocolChoice(defaultProtocol, store, here);
  return { choice, store, first: await choice.start() };
}

describe("at the start", () => {
  it("takes the bundled protocol where nothing was chosen", async () => {
    expect((await begun()).first).toEqual({
      loaded: await bundledProtocol(defaultProtocol, here),
      notice: undefined,
      fault: undefined,
    });
  });

  it("takes the file that was kept, read anew", async () => {
    const { choice, store } = await begun();
    await choice.choose([file, owner.signed(file), owner.key]);
    const { first } = await begun(store);
    expect(first.loaded.protocol).toEqual(minimalProtocol());
    expect(first.loaded.signedBy).toMatch(/^[0-9a-f]{16}$/);
    expect([first.notice, first.fault]).toEqual([undefined, undefined]);
  });

  it.each<readonly [string, StoredProtocol]>([
    ["is not valid any more", { file: bad }],
    ["was changed where it lay", { file: { ...file, signature: owner.signed(bad).bytes }, trustedKey: owner.pem }],
    ["lost the key that it was signed with", { file: { ...file, signature: owner.signed(file).bytes } }],
  ])("takes the bundled one where the stored file %s, and says so", async (_why, stored) => {
    const store = new FakeStore();
    store.stored = stored;
    const { first } = await begun(store);
    expect(first.loaded).toEqual(await bundledProtocol(defaultProtocol, here));
    expect(first.fault).toBe("The stored protocol cannot be used. The bundled example counts instead.");
    expect(first.notice?.kind).toBe("refused");
    expect(first.notice?.text).toContain(stored.file?.name);
    expect(first.notice?.errors.length).toBeGreaterThan(0);
    expect(store.stored).toBe(stored);
  });

  it("takes the bundled one where the storage cannot be read, and says so", async () => {
    const store = new FakeStore();
    store.error = { kind: "unavailable", detail: "private window" };
    const { first } = await begun(store);
    expect(first.loaded).toEqual(await bundledProtocol(defaultProtocol, here));
    expect(first.notice?.errors).toEqual(["Storage: private window."]);
    expect(first.fault).toBeDefined();
  });
});

describe("a choice", () => {
  it("of a file loads and keeps it", async () => {
    const { choice, store } = await begun();
    const { loaded, notice } = await choice.choose([file]);
    expect(loaded?.protocol).toEqual(minimalProtocol());
    expect(notice).toEqual({
      kind: "done",
      text: "Loaded ours.json: Small test protocol, version 1.0, not signed.",
      errors: [],
    });
    expect(store.stored).toEqual({ file });
  });

  it("of a bad file changes nothing and names what is wrong with it", async () => {
    const { choice, store } = await begun();
    await choice.choose([file]);
    const before = store.stored;
    const { loaded, notice } = await choice.choose([bad]);
    expect(loaded).toBeUndefined();
    expect(notice.kind).toBe("refused");
    expect(notice.text).toBe("bad.json was not loaded. The protocol in use stays.");
    expect(notice.errors).toContain("name: is missing");
    expect(store.stored).toBe(before);
  });

  it("of a signed file is judged by the key that was kept before", async () => {
    const { choice, store } = await begun();
    const key = await choice.choose([owner.key]);
    expect(key.loaded).toBeUndefined();
    expect(key.notice.text).toMatch(/^Trusted key [0-9a-f]{16}\.$/);
    const { loaded, notice } = await choice.choose([owner.signed(file), file]);
    expect(loaded?.signedBy).toMatch(/^[0-9a-f]{16}$/);
    expect(notice.text).toContain(`signed by key ${loaded?.signedBy ?? "none"}`);
    expect(store.stored.trustedKey).toBe(owner.pem);
  });

  it("of a signed file without a key is refused, with what to do", async () => {
    const { choice, store } = await begun();
    const { loaded, notice } = await choice.choose([file, owner.signed(file)]);
    expect(loaded).toBeUndefined();
    expect(notice.errors.join()).toContain("choose its owner's public key with it");
    expect(store.stored).toEqual({});
  });

  it("of another key alone is refused while it did not sign the file in use", async () => {
    const { choice, store } = await begun();
    await choice.choose([file, owner.signed(file), owner.key]);
    const { notice } = await choice.choose([signer().key]);
    expect(notice.text).toBe("The key was not taken: it did not sign the protocol in use.");
    expect(store.stored.trustedKey).toBe(owner.pem);
    expect((await choice.choose([owner.key])).notice.kind).toBe("done");
  });

  it("of a key alone leaves an unsigned file in use", async () => {
    const { choice, store } = await begun();
    await choice.choose([file]);
    expect((await choice.choose([owner.key])).notice.kind).toBe("done");
    expect(store.stored).toEqual({ file, trustedKey: owner.pem });
  });

  it("of a key that is none is refused", async () => {
    const { choice } = await begun();
    const key = { name: "k.pem", bytes: encode("-----BEGIN PUBLIC KEY-----\nAAAA\n-----END PUBLIC KEY-----") };
    expect((await choice.choose([key])).notice).toMatchObject({ kind: "refused", text: "The key was not taken." });
  });

  it("counts though it cannot be kept, and says so", async () => {
    const { choice, store } = await begun();
    store.error = { kind: "write-failed", detail: "disk full" };
    const { loaded, notice } = await choice.choose([file]);
    expect(loaded).toBeDefined();
    expect(notice.text).toContain("It could not be stored (disk full): after a reload it is gone.");
  });

  it.each<readonly [string, readonly ChosenFile[], string]>([
    ["nothing", [], "No file was chosen."],
    ["two protocols", [file, bad], "ours.json and bad.json are both a protocol: choose one of them."],
    [
      "a signature alone",
      [owner.signed(file)],
      "ours.json.sig is a signature: choose the protocol file that it belongs to with it.",
    ],
    [
      "a signature and a key",
      [owner.signed(file), owner.key],
      "ours.json.sig is a signature: choose the protocol file",
    ],
    [
      "something else",
      [{ name: "photo.png", bytes: new Uint8Array([1, 2]) }],
      "photo.png is neither a protocol file nor a signature",
    ],
  ])("of %s is refused", async (_what, files, said) => {
    const { choice } = await begun();
    const { loaded, notice } = await choice.choose(files);
    expect([loaded, notice.kind]).toEqual([undefined, "refused"]);
    expect(notice.errors[0]).toContain(said);
  });

  it("tells files by their content, and by their name where that does not tell", async () => {
    const { choice } = await begun();
    const renamed = { ...file, name: "ours.txt" };
    const base64 = { name: "s", bytes: encode(Buffer.from(owner.signed(file).bytes).toString("base64")) };
    expect((await choice.choose([base64, { ...owner.key, name: "key.txt" }, renamed])).notice.kind).toBe("done");
    expect((await choice.choose([{ name: "a.json", bytes: encode("oops") }])).notice.errors[0]).toContain("not JSON");
    const cut = { name: "a.sig", bytes: encode("cut short") };
    expect((await choice.choose([file, cut, owner.key])).notice.errors[0]).toContain("neither 64 bytes");
  });
});

describe("forgetting", () => {
  it("goes back to the bundled protocol, key and all", async () => {
    const { choice, store } = await begun();
    await choice.choose([file, owner.signed(file), owner.key]);
    const { loaded, notice } = await choice.forget();
    expect(loaded).toEqual(await bundledProtocol(defaultProtocol, here));
    expect(notice.text.startsWith("Back to the bundled protocol: ")).toBe(true);
    expect(store.stored).toEqual({});
    expect((await choice.choose([file, owner.signed(file)])).notice.kind).toBe("refused");
  });

  it("changes nothing where the storage refuses", async () => {
    const { choice, store } = await begun();
    await choice.choose([file]);
    store.error = { kind: "write-failed", detail: "no" };
    expect(await choice.forget()).toEqual({
      loaded: undefined,
      notice: { kind: "refused", text: "The stored protocol could not be forgotten.", errors: ["Storage: no."] },
    });
  });
});
