import { Component, type ErrorInfo, type ReactNode } from 'react';

interface ErrorBoundaryProps {
  /** The replacement; gets the error and a way to try again. */
  readonly instead: (error: Error, retry: () => void) => ReactNode;
  readonly children: ReactNode;
}

/** Catches an error while rendering and shows a replacement. */
export class ErrorBoundary extends Component<ErrorBoundaryProps, { readonly error: Error | null }> {
  override state = { error: null };

  static getDerivedStateFromError(error: unknown) {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override componentDidCatch(error: unknown, { componentStack }: ErrorInfo): void {
    console.error(error, componentStack);
  }

  override render(): ReactNode {
    const { error } = this.state;
    return error === null ? this.props.children : this.props.instead(error, () => this.setState({ error: null }));
  }
}
