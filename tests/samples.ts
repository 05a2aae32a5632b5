/**
 * How many random cases a test takes. Seeds are fixed, so that every run sees the same ones; COILFEED_SAMPLES=10 takes ten
 * times as many, the usual ones first: for a run by night.
 */
const MORE = Number(process.env.COILFEED_SAMPLES ?? 1);
if (!(MORE >= 1)) throw new Error('COILFEED_SAMPLES takes a number from 1 on: how many times as many');

/** `usual` of them, or as many more as the environment asks for. */
export const samples = (usual: number): number => Math.ceil(usual * MORE);
