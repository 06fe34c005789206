# Records what R's t.test and lm say of arrivals beside approved samples at a tolerance of 1 point, for CupComparisonTests.
# Run from this folder: Rscript arrival-verdict.R   (R 4.2, base packages only)
# Writes recorded/arrival-scores.csv and recorded/arrival-values.csv. Sample 0 is the approved sample or, in the second session of
# two, the arrival; in one session 1 is the arrival. With a reference, 1 is the reference in both sessions.
set.seed(20261126)
quarter <- function(x) round(x * 4) / 4
scores <- NULL ; values <- NULL
put <- function(design, way, session, sample, cupper, points)
  scores <<- rbind(scores, data.frame(design, way, session, sample, cupper, points))
note <- function(design, what, value)
  values <<- rbind(values, data.frame(design, what, value = sprintf("%.12g", value)))
tests <- function(design, ...) {
  above <- t.test(..., mu = -1, alternative = "greater") ; below <- t.test(..., mu = -1, alternative = "less")
  note(design, "se", above$stderr) ; note(design, "df", above$parameter)
  note(design, "lower", above$conf.int[1]) ; note(design, "upper", below$conf.int[2])
  note(design, "matches-p", above$p.value) ; note(design, "short-p", below$p.value)
}
sheets <- function(n, level) quarter(level + rnorm(n, 0, 0.9))

for (design in 1:10) { # both coffees in one session: the paired test
  n <- sample(3:9, 1) ; cupper <- rnorm(n, 0, 0.9)
  repeat {
    approved <- quarter(85 + cupper + rnorm(n, 0, 0.5)) ; arrival <- quarter(85 + runif(1, -2, 0.5) + cupper + rnorm(n, 0, 0.5))
    if (sd(arrival - approved) > 0.3) break
  }
  put(design, "paired", 0, 0, seq_len(n) - 1, approved) ; put(design, "paired", 0, 1, seq_len(n) - 1, arrival)
  tests(design, arrival, approved, paired = TRUE)
}
for (design in 11:20) { # two sessions, levels that do not differ: Welch's test
  repeat {
    approved <- sheets(sample(2:8, 1), 85) ; arrival <- sheets(sample(2:8, 1), runif(1, 83, 85.5))
    if (min(sd(approved), sd(arrival)) > 0.3) break
  }
  put(design, "welch", 0, 0, seq_along(approved) - 1, approved) ; put(design, "welch", 1, 0, seq_along(arrival) - 1, arrival)
  tests(design, arrival, approved)
}
for (design in 21:30) { # two sessions with the reference in both: Welch's test of each cupper's difference from it
  repeat {
    apart <- lapply(1:2, function(session) {
      n <- sample(2:8, 1) ; cupper <- rnorm(n, 0, 0.9)
      list(coffee = quarter(85 + cupper + rnorm(n, 0, 0.5)), reference = quarter(83 + cupper + rnorm(n, 0, 0.5)))
    })
    gap <- lapply(apart, function(one) one$coffee - one$reference)
    if (min(sapply(gap, sd)) > 0.3) break
  }
  for (session in 1:2) {
    n <- length(gap[[session]])
    put(design, "reference", session - 1, 0, seq_len(n) - 1, apart[[session]]$coffee)
    put(design, "reference", session - 1, 1, seq_len(n) - 1, apart[[session]]$reference)
  }
  tests(design, gap[[2]], gap[[1]])
}
for (design in 31:40) { # one session with other coffees, some cells empty: the contrast of the additive model
  repeat {
    t <- sample(3:6, 1) ; b <- sample(3:6, 1)
    cell <- expand.grid(sample = seq_len(t), cupper = seq_len(b)) ; cell <- cell[runif(nrow(cell)) < 0.85, ]
    both <- intersect(cell$cupper[cell$sample == 1], cell$cupper[cell$sample == 2])
    if (length(unique(cell$sample)) == t && length(unique(cell$cupper)) == b && length(both) > 1) {
      cell$points <- quarter(84 + rnorm(t)[cell$sample] + rnorm(b, 0, 0.9)[cell$cupper] + rnorm(nrow(cell), 0, 0.6))
      fit <- lm(points ~ 0 + factor(sample) + factor(cupper), cell)
      if (!anyNA(coef(fit)) && df.residual(fit) > 1) break
    }
  }
  put(design, "whole", 0, cell$sample - 1, cell$cupper - 1, cell$points)
  points <- unname(coef(fit)[2] - coef(fit)[1]) ; v <- vcov(fit) ; df <- df.residual(fit)
  se <- sqrt(v[1, 1] + v[2, 2] - 2 * v[1, 2])
  note(design, "se", se) ; note(design, "df", df)
  note(design, "lower", points - qt(0.95, df) * se) ; note(design, "upper", points + qt(0.95, df) * se)
  note(design, "matches-p", pt((points + 1) / se, df, lower.tail = FALSE)) ; note(design, "short-p", pt((points + 1) / se, df))
}
write.csv(scores, "recorded/arrival-scores.csv", row.names = FALSE, quote = FALSE)
write.csv(values, "recorded/arrival-values.csv", row.names = FALSE, quote = FALSE)
