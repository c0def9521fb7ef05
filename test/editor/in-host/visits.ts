/** Three visits to the site of the workspace, by the paths of their files: half a kelvin of drift in two years. */
export const VISITS: Readonly<Record<string, string>> = Object.fromEntries(
  ['58.0', '58.2', '58.5'].map((shown, year) => {
    const date = `${2024 + year}-09-01`;
    const reading = `{point: K2-MT-101, quantity: dew-point, shown: ${shown} degC, reference: 58 degC, reference-uncertainty: 0.2 K, using: reference-instrument}`;
    return [
      `${date}.dewvisit.yaml`,
      `dewright: 1\nvisit: {site: fennmoor, date: ${date}, purpose: check}\nreadings:\n  - ${reading}\n`,
    ];
  }),
);
