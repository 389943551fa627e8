"""What was asked, answered and decided."""
