"""From the way a garment hangs to the cause, the remedy and the job sheet."""
