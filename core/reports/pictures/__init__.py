"""What pictures show, as plain values: numbers in the farm's own units, labels, and the same in words. The shells give them their look."""
