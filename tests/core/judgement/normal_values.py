# SPDX-License-Identifier: MIT
"""Writes pairs { p, quantile } of the standard normal distribution, by statistics.NormalDist."""

from statistics import NormalDist

probabilities = [i / 1000 for i in range(1, 1000)]
probabilities += [(i + 0.5) / 4096 for i in range(4096)]
probabilities += [m * 10.0**-e for e in range(3, 301, 3) for m in (1, 2.5, 7)]
probabilities += [1 - m * 2.0**-e for e in range(4, 53) for m in (1, 1.5)]
# Where the published approximation changes its piece: |p - 1/2| = 0.425 and p = exp(-25).
probabilities += [0.075, 0.0749999999, 0.0750000001, 0.925, 0.9249999999, 0.9250000001,
                  1.388794386496402e-11, 1.3887943e-11, 1.3887945e-11]
inverse = NormalDist().inv_cdf
for p in probabilities:
    if 0 < p < 1:
        print(f'{{ {p!r}, {inverse(p)!r} }},')
