/** Kinds that a design and a shop's file have in common. */
export type FuseType = 'C' | 'F' | 'E' | 'SF30';
export type Suppression = 'none' | 'diode' | 'resistor' | 'diode_zener';

/** The instrument in one's hand, whatever it is set to. */
export type Sense = 'meter' | 'scope' | 'clamp' | 'ohmmeter' | 'trace' | 'log' | 'camera';
