import ipaddr from 'ipaddr.js'

/** The only part of IPv6 that is given out to the public internet (RFC 3513, 2000::/3). */
const GLOBAL_V6 = ipaddr.parseCIDR('2000::/3') as [ipaddr.IPv6, number]

/**
 * Whether an address is one of the public internet. Loopback, private, link-local, shared, multicast, reserved and documentation
 * ranges are not, nor is any IPv6 form that carries an IPv4 address inside (mapped, NAT64, 6to4, Teredo).
 */
export const isPublicAddress = (address: string): boolean => {
  if (!ipaddr.IPv4.isValidFourPartDecimal(address) && !ipaddr.IPv6.isValid(address)) return false
  const parsed = ipaddr.parse(address)
  // ipaddr.js calls unicast what no special range of its list holds.
  if (parsed.range() !== 'unicast') return false
  return parsed.kind() === 'ipv4' || (parsed as ipaddr.IPv6).match(GLOBAL_V6)
}
