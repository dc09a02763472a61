"""What happens when the power goes, the process is killed, or a step fails: nothing lost, nothing twice."""
