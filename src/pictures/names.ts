/** What lines and marks are called, in pictures and in the charts of the workbook alike. */
export const NAMES = {
  latest: 'fuse: opens at the latest',
  earliest: 'fuse: opens not before',
  atLimit: (runs: string): string => `${runs} at its limit`,
  farEnd: 'short at the far end',
  nearEnd: 'short at the near end',
  stuck: 'driver stuck on',
  fuse: 'fuse',
  ampacity: 'ampacity',
} as const;
