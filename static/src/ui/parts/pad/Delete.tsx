// The sign on the key that takes the last one back.

export const Delete = () => (
  <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
    <path
      d="M9 2h17v16H9L2 10ZM13 6.5l7 7m0-7-7 7"
      fill="none"
      stroke="currentColor"
      stroke-width="2.2"
      stroke-linejoin="round"
    />
  </svg>
);
