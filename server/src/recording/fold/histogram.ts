/** How long a value lay in each of many equal bins. */
export interface Histogram {
  add(value: number, seconds: number): void;
  /** The value below which a share of the time lies, the time of a bin being spread evenly over it. */
  quantile(share: number): number | undefined;
  /** The bin edge beyond which at most so many seconds lie. */
  edgeLeaving(seconds: number, side: 'below' | 'above'): number | undefined;
}

/** 8 MB: what lies still further out, such as a mixing ratio close to boiling, shares the outermost bin. */
const MOST_BINS = 1 << 20;
const FIRST_BINS = 256;

/** @param width of a bin, in the unit of the values */
export function histogram(width: number): Histogram {
  /** The bins in use lie around the first value; `lowest` is the number of the first of them. */
  let bins = new Float64Array(0);
  let lowest = 0;
  let total = 0;

  const makeRoomFor = (bin: number): void => {
    if (bins.length === 0) {
      bins = new Float64Array(FIRST_BINS);
      lowest = bin - FIRST_BINS / 2;
    }
    while (bins.length < MOST_BINS && (bin < lowest || bin >= lowest + bins.length)) {
      const wider = new Float64Array(bins.length * 2);
      const below = bin < lowest ? bins.length : 0;
      wider.set(bins, below);
      bins = wider;
      lowest -= below;
    }
  };
  return {
    add(value, seconds) {
      const bin = Math.floor(value / width);
      if (bin < lowest || bin >= lowest + bins.length) makeRoomFor(bin);
      const index = Math.max(0, Math.min(bins.length - 1, bin - lowest));
      bins[index] = (bins[index] ?? 0) + seconds;
      total += seconds;
    },
    quantile(share) {
      const wanted = share * total;
      let before = 0;
      for (const [index, seconds] of bins.entries()) {
        if (seconds > 0 && before + seconds >= wanted) return (lowest + index + (wanted - before) / seconds) * width;
        before += seconds;
      }
      return undefined;
    },
    edgeLeaving(seconds, side) {
      let beyond = 0;
      for (let step = 0; step < bins.length; step++) {
        const index = side === 'above' ? bins.length - 1 - step : step;
        beyond += bins[index] ?? 0;
        if (beyond > seconds) return (lowest + (side === 'above' ? index + 1 : index)) * width;
      }
      return undefined;
    },
  };
}
