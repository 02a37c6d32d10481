/** The part of jstat that is used here; the package brings no types of its own. */
declare module 'jstat' {
  const jStat: {
    readonly studentt: {
      /** Value below which a share `p` of Student's t with `df` degrees of freedom (need not be whole) lies. */
      inv(p: number, df: number): number;
    };
  };
  // biome-ignore lint/style/noDefaultExport: the package exports nothing by name
  export default jStat;
}
