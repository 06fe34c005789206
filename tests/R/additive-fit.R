# Records what R's lm gives for random connected panels, for AdditiveFitTests.
# Run from this folder: Rscript additive-fit.R   (R 4.2, base packages only)
# Writes recorded/additive-fit-scores.csv and recorded/additive-fit-values.csv.
set.seed(20261125)

connected <- function(sample, cupper) {
  seen <- sample[1] ; before <- -1
  while (length(seen) != before) {
    before <- length(seen)
    seen <- unique(sample[cupper %in% cupper[sample %in% seen]])
  }
  length(seen) == length(unique(sample))
}

draw <- function() {
  repeat {
    samples <- sample(3:12, 1) ; cuppers <- sample(2:7, 1)
    cell <- expand.grid(sample = seq_len(samples), cupper = seq_len(cuppers))
    cell <- cell[runif(nrow(cell)) < runif(1, 0.45, 1), ]
    # Some cuppers taste a sample twice.
    cell <- rbind(cell, cell[runif(nrow(cell)) < 0.1, ])
    enough <- nrow(cell) - length(unique(cell$sample)) - length(unique(cell$cupper)) + 1
    if (nrow(cell) > 0 && length(unique(cell$sample)) == samples && length(unique(cell$cupper)) == cuppers &&
        enough >= 2 && connected(cell$sample, cell$cupper)) break
  }
  cell$points <- round((84 + rnorm(samples, 0, 1.5)[cell$sample] + rnorm(cuppers, 0, 0.8)[cell$cupper] +
                          rnorm(nrow(cell), 0, 0.6)) * 4) / 4
  cell
}

scores <- NULL ; values <- NULL
note <- function(design, what, one, other, value) {
  values <<- rbind(values, data.frame(design, what, one, other, value = sprintf("%.12g", value)))
}

for (design in 1:30) {
  cell <- draw()
  scores <- rbind(scores, data.frame(design, sample = cell$sample - 1, cupper = cell$cupper - 1, points = cell$points))
  s <- factor(cell$sample) ; c <- factor(cell$cupper)
  contrasts(c) <- contr.sum(nlevels(c))
  fit <- lm(cell$points ~ 0 + s + c)
  t <- nlevels(s) ; b <- nlevels(c)
  cov <- vcov(fit)[1:t, 1:t]
  effect <- coef(fit)[-(1:t)] ; effect <- c(effect, -sum(effect))
  for (i in 1:t) {
    note(design, "adjusted", i - 1, -1, coef(fit)[i])
    note(design, "se", i - 1, -1, sqrt(cov[i, i]))
  }
  for (j in 1:b) note(design, "effect", j - 1, -1, effect[j])
  for (i in 2:t) note(design, "difference-se", 0, i - 1, sqrt(cov[1, 1] + cov[i, i] - 2 * cov[1, i]))
  note(design, "rss", -1, -1, deviance(fit))
  note(design, "df", -1, -1, df.residual(fit))
  note(design, "f", -1, -1, anova(lm(cell$points ~ c), lm(cell$points ~ c + s))$F[2])
  note(design, "t95", -1, -1, qt(0.975, df.residual(fit)))
}
write.csv(scores, "recorded/additive-fit-scores.csv", row.names = FALSE, quote = FALSE)
write.csv(values, "recorded/additive-fit-values.csv", row.names = FALSE, quote = FALSE)
