# Records what R says of the studentized range, of all pairwise differences and of weighted fits, for StudentizedRangeTests,
# PairwiseDifferencesTests and AdditiveFitTests. Run from this folder after additive-fit.R: Rscript telling-apart.R
# (R 4.2, base packages only). Reads recorded/additive-fit-scores.csv; writes recorded/studentized-range.csv,
# recorded/pairwise-values.csv and recorded/weighted-fit-values.csv.
set.seed(20261126)

# ptukey is right to six decimals only; both integrals by adaptive quadrature are right to ten.
exceeds <- function(w, k) {
  1 - k * integrate(function(z) dnorm(z) * (pnorm(z) - pnorm(z - w))^(k - 1), -9, 9, rel.tol = 1e-11, abs.tol = 1e-13, subdivisions = 500)$value
}
tail <- function(q, k, df) {
  if (is.infinite(df)) return(exceeds(q, k))
  density <- function(s) exp(log(2) + df / 2 * log(df / 2) - lgamma(df / 2) + (df - 1) * log(s) - df * s^2 / 2)
  at <- function(s) density(s) * sapply(q * s, exceeds, k = k)
  reach <- sqrt(qchisq(1e-14, df, lower.tail = FALSE) / df)
  value <- integrate(at, 1e-12, 1, rel.tol = 1e-10, subdivisions = 500)$value + integrate(at, 1, reach, rel.tol = 1e-10, subdivisions = 500)$value
  stopifnot(df < 3 || abs(value - ptukey(q, k, df, lower.tail = FALSE)) < 5e-6)
  value
}

range <- NULL
for (k in c(2, 3, 5, 8, 12, 20)) for (df in c(3, 4, 6, 10, 20, 46, 120, Inf)) for (q in c(0.5, 1.5, 3, 4.5, 7)) {
  range <- rbind(range, data.frame(q, means = k, df = ifelse(is.finite(df), df, "inf"),
                                   tail = sprintf("%.12g", tail(q, k, df))))
}
write.csv(range, "recorded/studentized-range.csv", row.names = FALSE, quote = FALSE)

scores <- read.csv("recorded/additive-fit-scores.csv")
pairs <- NULL ; weighted <- NULL
note <- function(design, what, one, value) {
  weighted <<- rbind(weighted, data.frame(design, what, one, value = sprintf("%.12g", value)))
}
for (design in unique(scores$design)) {
  cell <- scores[scores$design == design, ]
  s <- factor(cell$sample) ; c <- factor(cell$cupper)
  contrasts(c) <- contr.sum(nlevels(c))
  t <- nlevels(s) ; b <- nlevels(c)

  fit <- lm(cell$points ~ 0 + s + c)
  cov <- vcov(fit) ; df <- df.residual(fit)
  for (i in 1:(t - 1)) for (j in (i + 1):t) {
    d <- coef(fit)[i] - coef(fit)[j]
    se <- sqrt(cov[i, i] + cov[j, j] - 2 * cov[i, j])
    pairs <- rbind(pairs, data.frame(design, one = i - 1, other = j - 1, points = sprintf("%.12g", d), se = sprintf("%.12g", se),
                                     p = sprintf("%.12g", tail(sqrt(2) * abs(d) / se, t, df))))
  }

  # Weighted: each cupper's sheets count w; effects then sum to zero when each counts its weight.
  w <- round(runif(b, 0.1, 1), 2)
  heavy <- lm(cell$points ~ 0 + s + c, weights = w[as.integer(c)])
  level <- (w / sum(w)) %*% contr.sum(b)
  shift <- cbind(diag(t), matrix(rep(level, each = t), t))
  effect <- contr.sum(b) %*% coef(heavy)[-(1:t)]
  adjusted <- shift %*% coef(heavy)
  se <- sqrt(diag(shift %*% vcov(heavy) %*% t(shift)))
  for (j in 1:b) { note(design, "weight", j - 1, w[j]) ; note(design, "effect", j - 1, effect[j] - sum(w * effect) / sum(w)) }
  for (i in 1:t) { note(design, "adjusted", i - 1, adjusted[i]) ; note(design, "se", i - 1, se[i]) }
  note(design, "rss", -1, deviance(heavy))
  note(design, "f", -1, anova(lm(cell$points ~ c, weights = w[as.integer(c)]), heavy)$F[2])
}
write.csv(pairs, "recorded/pairwise-values.csv", row.names = FALSE, quote = FALSE)
write.csv(weighted, "recorded/weighted-fit-values.csv", row.names = FALSE, quote = FALSE)
