# R's side of the exact tests of `bench_stats`: best of three.
#   Rscript exact.R TABLES -> lines of name, seconds and result, with tabs between
tables <- as.integer(commandArgs(trailingOnly = TRUE)[1])
i <- seq_len(tables)
# The same small counts as in tests/src/bench_stats.rs.
a <- 1 + i %% 8
b <- 3 + i %% 7
c <- i %% 5

tell <- function(name, of) {
  times <- c()
  for (run in 1:3) {
    start <- proc.time()[["elapsed"]]
    value <- sum(vapply(i, function(k) { test <- of(k); test$p.value + sum(test$conf.int[1]) }, 0))
    times <- c(times, proc.time()[["elapsed"]] - start)
  }
  cat(sprintf("%s\t%.9f\t%.15g\n", name, max(min(times), 1e-6), value))
}

tell("binomial test", function(k) binom.test(a[k], a[k] + b[k], 0.3))
tell("Poisson rates", function(k) poisson.test(c(a[k], c[k]), c(60 + k, 90)))
