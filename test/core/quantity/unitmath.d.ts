declare module 'unitmath' {
  /** As much of it as is compared: the library comes without types. */
  export default function unit(text: string): { to(unit: string): { value: number } };
}
