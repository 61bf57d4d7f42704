# R's side of `bench_stats`: best of three, reading the data not counted.
#   Rscript stats.R DATA N -> lines of name, seconds and result, with tabs between
suppressPackageStartupMessages(library(survival))
arguments <- commandArgs(trailingOnly = TRUE)
n <- as.integer(arguments[2])
file <- file(arguments[1], "rb")
minutes <- readBin(file, "double", n)
bite <- readBin(file, "double", n)
group <- readBin(file, "double", n)
close(file)

best <- function(run) {
  times <- c()
  for (i in 1:3) {
    gc(FALSE)
    start <- proc.time()[["elapsed"]]
    # A thousand waits are over before the clock ticks: run them often enough.
    repeats <- if (n <= 1000) 20 else 1
    for (j in 1:repeats) value <- run()
    times <- c(times, (proc.time()[["elapsed"]] - start) / repeats)
  }
  list(seconds = max(min(times), 1e-6), value = value)
}
tell <- function(name, of) cat(sprintf("%s\t%.9f\t%.15g\n", name, of$seconds, of$value))

# The sum of the curve at all bite times, so that the whole of it has been computed.
tell("Kaplan-Meier", best(function() {
  f <- survfit(Surv(minutes, bite) ~ 1, conf.type = "log-log")
  sum(f$surv[f$n.event > 0])
}))
tell("log-rank", best(function() survdiff(Surv(minutes, bite) ~ group)$chisq))
