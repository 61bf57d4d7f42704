# The same figures as ours, from R's survival and stats packages.
#
#   Rscript agree.R WAITS.csv OUT.csv
#
# WAITS.csv: set,group,minutes,bite  (group 1 or 2). OUT.csv: set,figure,value with 17 digits.
# `cargo run -p restwater-tests --bin r_agreement` writes the one, runs this and compares the other.

suppressPackageStartupMessages(library(survival))
arguments <- commandArgs(trailingOnly = TRUE)
waits <- read.csv(arguments[1])

figures_of <- function(d) {
  out <- c()
  put <- function(name, values) {
    values <- as.numeric(values)
    names(values) <- if (length(values) == 1) name else paste(name, seq_along(values) - 1, sep = ".")
    out <<- c(out, values)
  }
  s <- Surv(d$minutes, d$bite)

  rank <- survdiff(s ~ d$group)
  put("logrank.observed", rank$obs)
  put("logrank.expected", rank$exp)
  put("logrank.variance", rank$var[1, 1])
  put("logrank.chisq", rank$chisq)

  curve <- survfit(s ~ 1, conf.type = "log-log")
  at <- curve$n.event > 0
  put("km.minutes", curve$time[at])
  put("km.survival", curve$surv[at])
  # No limits where the curve is at zero.
  off_zero <- at & curve$n.risk > curve$n.event
  put("km.error", (curve$surv * curve$std.err)[off_zero])
  put("km.low", curve$lower[off_zero])
  put("km.high", curve$upper[off_zero])
  # Where a step lies on one half exactly R averages two times; our median is the first of them.
  if (all(abs(curve$surv - 0.5) > 1e-8)) put("km.median", quantile(curve, 0.5)$quantile)

  bites <- tapply(d$bite, d$group, sum)
  minutes <- tapply(d$minutes, d$group, sum)
  rates <- poisson.test(as.vector(bites), as.vector(minutes))
  put("poisson.p", rates$p.value)
  put("poisson.ratio", rates$conf.int)
  put("poisson.one", poisson.test(bites[[1]], minutes[[1]])$conf.int)

  share <- binom.test(sum(d$bite), nrow(d), p = 0.37)
  put("binomial.p", share$p.value)
  put("binomial.limits", share$conf.int)
  out
}

rows <- lapply(split(waits, waits$set), function(d) {
  f <- figures_of(d)
  data.frame(set = d$set[1], figure = names(f), value = sprintf("%.17g", f))
})
write.csv(do.call(rbind, rows), arguments[2], row.names = FALSE, quote = FALSE)
