/** A steel head of usual size on its stem, for tests of what it loses. */
export const STEM = { diameter: 0.012, wallThickness: 0.001, conductivity: 17 };
export const HEAD = {
  diameter: 0.012,
  length: 0.06,
  axis: 'vertical',
  emissivity: 0.22,
  stem: STEM,
  stemLength: 0.14,
} as const;
