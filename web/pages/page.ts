/** What a page hands to the frame around it. */
export interface Page {
  readonly title: string;
  /** Where in the site the user is, beside the name of the program. */
  readonly where: string;
  readonly content: Node;
  /** Called when the page is on screen. */
  readonly shown?: () => void;
  /** Called before another page takes its place. */
  readonly dispose?: () => void;
}
