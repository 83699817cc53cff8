/** The 95 % quantile of the standard normal distribution: a central 90 % interval is mean ± this × sd. */
export const normal95 = 1.6448536269514722
