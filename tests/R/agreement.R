# Records agreement figures for random complete tables, for AgreementTests: mean squares by R's aov, Friedman by
# friedman.test, Kendall's W as chi-squared / (m (n - 1)). Run from this folder: Rscript agreement.R
set.seed(20261125)
scores <- NULL ; values <- NULL
note <- function(table, what, value) {
  values <<- rbind(values, data.frame(table, what, value = sprintf("%.12g", value)))
}
for (table in 1:20) {
  n <- sample(3:9, 1) ; k <- sample(2:6, 1)
  x <- round((84 + outer(rnorm(n, 0, 1.5), rnorm(k, 0, 0.8), "+") + rnorm(n * k, 0, 0.7)) * 4) / 4
  cell <- data.frame(sample = factor(row(x)), cupper = factor(col(x)), points = as.vector(x))
  scores <- rbind(scores, data.frame(table, sample = as.vector(row(x)) - 1, cupper = as.vector(col(x)) - 1, points = cell$points))
  two <- anova(lm(points ~ sample + cupper, cell))$"Mean Sq"
  one <- anova(lm(points ~ sample, cell))$"Mean Sq"
  b <- two[1] ; j <- two[2] ; e <- two[3] ; w <- one[2]
  note(table, "icc11", (b - w) / (b + (k - 1) * w))
  note(table, "icc21", (b - e) / (b + (k - 1) * e + k * (j - e) / n))
  note(table, "icc31", (b - e) / (b + (k - 1) * e))
  note(table, "icc1k", (b - w) / b)
  note(table, "icc2k", (b - e) / (b + (j - e) / n))
  note(table, "icc3k", (b - e) / b)
  friedman <- friedman.test(t(x))
  note(table, "chi2", friedman$statistic)
  note(table, "p", friedman$p.value)
  note(table, "w", friedman$statistic / (k * (n - 1)))
}
write.csv(scores, "recorded/agreement-scores.csv", row.names = FALSE, quote = FALSE)
write.csv(values, "recorded/agreement-values.csv", row.names = FALSE, quote = FALSE)
