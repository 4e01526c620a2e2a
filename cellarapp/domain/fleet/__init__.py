"""The fleet: who has containers, whom to call for them, and how many it takes."""
