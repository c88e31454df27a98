/*
 * Text and bytes without the platform: this layer runs where there is no TextDecoder.
 */

const hexByte = (byte: number): string => `%${byte.toString(16).padStart(2, "0")}`;

const BYTE_ORDER_MARK = "\ufeff";

/** Strict UTF-8 with a byte order mark left out; `undefined` where the bytes are none. */
export function utf8Text(bytes: Uint8Array): string | undefined {
  let escaped = "";
  for (const byte of bytes) escaped += hexByte(byte);
  try {
    const text = decodeURIComponent(escaped);
    return text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  } catch {
    return undefined;
  }
}

/** Text as UTF-8. Not for text with half of a surrogate pair, which no UTF-8 can say: canonical JSON has none. */
export function utf8Bytes(text: string): Uint8Array {
  const escaped = encodeURIComponent(text);
  const bytes = new Uint8Array(escaped.replace(/%../gu, "x").length);
  let at = 0;
  for (let i = 0; i < escaped.length; i++) {
    const isEscape = escaped[i] === "%";
    bytes[at++] = isEscape ? Number.parseInt(escaped.slice(i + 1, i + 3), 16) : escaped.charCodeAt(i);
    if (isEscape) i += 2;
  }
  return bytes;
}

const BASE64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const WHOLE_BASE64 = /^(?:[A-Za-z0-9+/]{4})*(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$/u;

/** Base64 of RFC 4648 with padding, spaces and line ends left out of account; `undefined` where the text is none. */
export function base64Bytes(text: string): Uint8Array | undefined {
  const packed = text.replace(/\s+/gu, "");
  if (packed === "" || !WHOLE_BASE64.test(packed)) return undefined;
  const sextets = [...packed.replace(/=+$/u, "")].map((letter) => BASE64.indexOf(letter));
  const bytes = new Uint8Array(Math.floor((sextets.length * 6) / 8));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (const sextet of sextets) {
    held = ((held << 6) | sextet) & 0xfff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}
