"""What is worked out at the racking bench and in the wash: doses, fills, strength, solutions."""
