const megabytes = (bytes) => Math.round(bytes / 1e6);

/** Shows how far a download has come: on a terminal in one line that changes, else once every tenth of it. */
export function fetchProgress(out = process.stdout) {
  let tenth = -1;
  let open = false;
  const show = (words) => {
    if (out.isTTY) {
      out.write(`\r\u001b[K${words}`);
      open = true;
    } else out.write(`${words}\n`);
  };
  return {
    told({ doing, received, total }) {
      if (doing === 'receiving') {
        const now = total ? Math.floor((10 * received) / total) : 0;
        if (!out.isTTY && now === tenth) return;
        tenth = now;
        const share = total ? ` of ${megabytes(total)} MB, ${Math.round((100 * received) / total)} %` : ' MB';
        show(`submark: fetching Electron’s program: ${megabytes(received)}${share}`);
      } else if (doing === 'received') show('submark: checking and unpacking Electron’s program …');
    },
    /** Leaves the line as it is and goes on below it. */
    end() {
      if (open) out.write('\n');
      open = false;
    },
  };
}
