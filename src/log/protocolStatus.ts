const EXAMPLE = "Example protocol, not approved for patients.";

/** What a protocol without an owner's approval is called, aloud and in print; empty for an approved one. */
export const protocolStatus = (status: "example" | "approved"): string => (status === "example" ? EXAMPLE : "");
