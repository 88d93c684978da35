import {
  lazyAndBiasedAfter,
  lazyAndBiasedBefore,
  mirroringAfter,
  mirroringBefore,
} from './oxygenCaptures.ts';

/** The samples' recordings, each by its name in samples/captures. */
export const captureFiles: Readonly<Record<string, () => string>> = {
  'mirroring-before.csv': mirroringBefore,
  'mirroring-after.csv': mirroringAfter,
  'two-banks-before.csv': lazyAndBiasedBefore,
  'two-banks-after.csv': lazyAndBiasedAfter,
};
