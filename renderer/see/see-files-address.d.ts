/** Where the built app keeps what seeing needs; see `see-files.ts`. */
declare module 'virtual:see-files' {
  const files: import('./see-message').SeeFiles;
  // biome-ignore lint/style/noDefaultExport: addresses have no other name
  export default files;
}
