"""Simulate the table of determination/counting/dip_quantiles.py, and how many plants show a gap more often than not.

Run `python examples/dip_quantiles.py` (some minutes); the seed is fixed, so that the same table is printed each time
on the same release of numpy. The dip of samples of the uniform distribution is the largest that a single peak gives in
the long run (J. A. Hartigan & P. M. Hartigan, Annals of Statistics 13 (1985): 70–84).
"""

from __future__ import annotations

import sys

import numpy as np
import numpy.typing as npt

from auctorum.determination.counting.dip import SURE, dip, dip_test

SEED = 20240917
SAMPLES = 20_000
SIZES = (4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 30, 50, 100, 200, 500, 1000, 2000, 5000)
LEVELS = (0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 0.995, 0.998, 0.999)


def quantiles(size: int, samples: int = SAMPLES, seed: int = SEED) -> npt.NDArray[np.float64]:
    """Quantiles of sqrt(n) times the dip of n uniform values, at LEVELS."""
    random = np.random.default_rng([seed, size])
    found = [dip(random.random(size)) for _ in range(samples)]
    return np.asarray(np.sqrt(size) * np.quantile(found, LEVELS))


def share_found(size: int, samples: int = SAMPLES, seed: int = SEED) -> float:
    """The share of samples in which the gap between two equal groups, four standard deviations apart, is found."""
    random = np.random.default_rng([seed, size, 4])
    drawn = (random.normal(size=size) + 4 * random.integers(0, 2, size=size) for _ in range(samples))
    return sum(dip_test(values).p < SURE for values in drawn) / samples


def main() -> None:
    """Print the rows of the table, or with `found` the share found at each number of plants."""
    if sys.argv[1:] == ["found"]:
        for size in range(50, 66):
            print(size, f"{share_found(size):.3f}", flush=True)
        return
    for size in SIZES:
        row = ", ".join(str(round(value * 10_000)) for value in quantiles(size))
        print(f"    {size}: ({row}),", flush=True)


if __name__ == "__main__":
    main()
