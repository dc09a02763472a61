"""The winter plan's parts: what each animal eats until spring, what it is worth, and the plan itself."""
