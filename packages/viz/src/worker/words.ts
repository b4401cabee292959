/** Names as definitions write them, in running text: 'sets sideLoad' -> 'sets side load'. Units such as kPa stay. */
export function words(text: string): string {
  return text.replace(/\b[a-z]{2,}(?:[A-Z][a-z]+)+\b/g, (name) =>
    name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
  );
}
