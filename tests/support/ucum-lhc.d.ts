/** The part of @lhncbc/ucum-lhc that the tests use; the package brings no types. */
declare module '@lhncbc/ucum-lhc' {
  interface UcumUtils {
    validateUnitString(code: string): { readonly status: 'valid' | 'invalid' | 'error' };
    convertUnitTo(from: string, value: number, to: string): { readonly toVal: number };
  }
  export const UcumLhcUtils: { getInstance(): UcumUtils };
  const ucum: { readonly UcumLhcUtils: { getInstance(): UcumUtils } };
  export default ucum;
}
