"""Pictures that may be shown: hung under an address that tells nothing, found again, measured when first rendered."""
