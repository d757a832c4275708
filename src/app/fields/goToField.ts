/** The nearest field at or above the path; details that hide it are opened by the browser only for anchors, so here too. */
export function goToField(path: string): void {
  const field =
    document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`) ??
    document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path.split('.').slice(0, -1).join('.'))}"]`);
  field?.closest('details')?.setAttribute('open', '');
  field?.focus();
}
