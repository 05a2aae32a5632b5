/** What is read off a result in several places of the page. */

/** `6 mm²` */
export const sizeText = (gauge: string | null): string => (gauge ?? '–').replace('mm2', 'mm²');
