/** Units in which the fleet's rules work. */

export const radians = (degrees: number): number => degrees * (Math.PI / 180);
