/** The part of convert-units that the tests call; the package has no types of its own. */
declare module "convert-units" {
  export default function convert(value: number): {
    from(unit: string): { to(unit: string): number };
  };
}
