"""A container's life after filling: dates and labels, ready and plan, dips and what is left."""
