/** Where the built app keeps OpenCV's script; see `opencv-script.ts`. */
declare module 'virtual:opencv-address' {
  const address: string;
  // biome-ignore lint/style/noDefaultExport: an address has no other name
  export default address;
}
