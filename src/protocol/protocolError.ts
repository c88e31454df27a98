import { inDocumentOrder } from "./documentOrder.ts";
import { pathText, type Faults } from "./fault.ts";

/** One thing that is wrong with a protocol file, and where: "drugs[3].doses[0].cap"; empty: the file as a whole. */
export type ProtocolError = { readonly path: string; readonly message: string };

/** Faults as they are reported: in the order of the file, each with its path. */
export const errorsOf = (json: unknown, faults: Faults): readonly ProtocolError[] =>
  inDocumentOrder(json, faults).map(({ at, message }) => ({ path: pathText(at), message }));

/** "drugs[3].doses[0].cap: 150 mg is below the lowest dose of 200 mg". */
export const showProtocolError = ({ path, message }: ProtocolError): string =>
  path === "" ? `The file ${message}` : `${path}: ${message}`;
