/** The shop's file as a text beside a design: apart from what reads it, for who only passes it on. */

/** The text of a shop's file, and its name in messages. */
export interface ShopText {
  readonly text: string;
  readonly file: string;
  /** What designs call it that mean this file: others do not get it. Without a name it takes the place of any other. */
  readonly as?: string;
}

/** Whether it is the one for a design that says `own` under its key `shop`. */
export const isMeant = ({ as }: ShopText, own: unknown): boolean =>
  as === undefined || (typeof own === 'string' && own.trim() === as);

/** What a result calls the file: the same from wherever it was called. */
export const fileName = (file: string): string => file.replace(/^.*[\\/]/, '');
