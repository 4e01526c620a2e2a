"""The one write path: takes entries in, gives positions, folds and projects; check and rebuild."""
