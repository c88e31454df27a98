/** What the tests use of the UCUM reference library, which comes without types. */
declare module "@lhncbc/ucum-lhc" {
  type Converted = { readonly status: "succeeded" | "failed" | "error"; readonly toVal: number | null };
  export const UcumLhcUtils: {
    getInstance(): {
      validateUnitString(unit: string): { readonly status: "valid" | "invalid" | "error" };
      convertUnitTo(
        from: string,
        value: number,
        to: string,
        options?: { readonly molecularWeight?: number },
      ): Converted;
    };
  };
}
