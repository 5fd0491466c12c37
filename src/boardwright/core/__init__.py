"""What every stage speaks: lengths, findings, places in the file, poses, ids. Standard library only."""
