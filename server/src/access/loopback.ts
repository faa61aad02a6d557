/** Whether an address of a socket is this machine's own. */
export const isLoopbackAddress = (address: string): boolean =>
  address === '::1' || /^(?:::ffff:)?127\.\d+\.\d+\.\d+$/u.test(address)

/** Whether a host name, as written in an address, always means this machine. */
export const isLoopbackName = (name: string): boolean =>
  name === 'localhost' || name === '[::1]' || isLoopbackAddress(name)
