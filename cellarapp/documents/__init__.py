"""What comes in and leaves as paper or file."""
