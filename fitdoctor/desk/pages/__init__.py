"""The seven steps of fitting a garment, a page each."""
