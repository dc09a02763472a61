"""What is printed or carried off: plain values of what stands on each paper. The shells give them their look."""
