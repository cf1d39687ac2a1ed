"""The window statistics of DatabaseAndPandasBenchmarks in pandas: prints seconds and low mornings."""
import sys
import time

import numpy as np
import pandas as pd

rows = pd.read_csv(sys.argv[1], header=None, names=["athlete", "day", "rhr", "ln"])
rows["date"] = pd.to_datetime(rows["day"], unit="D")
begun = time.perf_counter()
rows = rows.set_index("date")
window = rows.groupby("athlete").rolling("28D", closed="left", min_periods=7)
median = window["rhr"].median()
mad = window["rhr"].apply(lambda w: np.median(np.abs(w - np.median(w))), raw=True)
mean = window["ln"].mean()
sd = window["ln"].std()
recent = rows.groupby("athlete").rolling("7D", min_periods=3)["ln"].mean()
rhr = rows.set_index("athlete", append=True).swaplevel()["rhr"].sort_index()
low = (rhr - median) < -np.maximum(5, 2 * np.maximum(1, 1.4826 * mad))
suppressed = recent < mean - np.maximum(0.05, sd)
count = int(low.sum())
suppressed.sum()
print(time.perf_counter() - begun, count)
