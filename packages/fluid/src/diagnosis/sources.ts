/** Who says that a cause shows a sign. What was not read again is marked "from memory". */
export const sources = {
  osha: 'OSHA, Metalworking Fluids: Safety and Health Best Practices Manual (1999), signs of a changed fluid; partly from memory',
  niosh:
    'NIOSH 98-102, Criteria for a Recommended Standard: Occupational Exposure to Metalworking Fluids (1998), from memory',
  hse: 'HSE, COSHH essentials for machining with metalworking fluids and “Metalworking fluids”, from memory',
  dguv: 'DGUV Regel 109-003, §6.3.1.7 and §7.1.1',
  trgs: 'TRGS 611 (2007), §5.2 and §5.3',
  iwrc: 'Iowa Waste Reduction Center, Cutting Fluid Management for Small Machining Operations (2003), section 4.2, from memory',
  ifa: 'IFA, lexicon of cooling lubricants, water and concentration',
  practice: 'common practice, no source',
} as const

export type SourceKey = keyof typeof sources
