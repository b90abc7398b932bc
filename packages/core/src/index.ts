export type { Address } from "./address/address.ts";
export { formatAddress, parseAddress } from "./address/address.ts";
