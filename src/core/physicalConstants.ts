// Sources: NIST SP 811 (2008), appendix B.8, from memory: conventional millimetre of mercury and standard gravity.

export const PA_PER_MMHG = 133.322387415;
export const GRAVITY_M_PER_S2 = 9.80665;
