# Values recorded in the tests of the room Choosing. Run: Rscript tests/R/choosing.R (base R, no packages).
options(digits = 10)

cat("1. Chance of best, independent normal scores (handbook quality.md 4.12)\n")
m <- c(86.1, 85.6, 84.9); s <- c(0.40, 0.50, 0.35)
for (i in 1:3) {
  others <- setdiff(1:3, i)
  f <- function(x) dnorm(x, m[i], s[i]) * pnorm(x, m[others[1]], s[others[1]]) * pnorm(x, m[others[2]], s[others[2]])
  cat(integrate(f, m[i] - 10 * s[i], m[i] + 10 * s[i], rel.tol = 1e-10)$value, "\n")
}

cat("2. T against R of the additive fit of handbook 4.6: Student's t, 6 degrees of freedom\n")
y <- c(84.50, 85.50, 86.25, 83.00, 82.25, 83.75, 84.75, 87.75, 84.50, 88.50, 83.75, 84.50, 86.00, 86.25)
cupper <- factor(c(1, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 4))
sample <- factor(c("P", "Q", "R", "S", "P", "Q", "T", "R", "S", "T", "P", "Q", "R", "T"))
fit <- lm(y ~ cupper + relevel(sample, "R"))
row <- coef(summary(fit))["relevel(sample, \"R\")T", ]
cat("T - R", row[1], "SE", row[2], "P(T > R)", pt(row[1] / row[2], fit$df.residual), "\n")

cat("3. Five lots of two sessions, shared errors, Student's t in the first (4 million draws, seed 1)\n")
set.seed(1)
n <- 4e6
scale <- sqrt(5 / rchisq(n, 5))                        # session 1: 5 degrees of freedom
u1 <- rnorm(n); u2 <- rnorm(n); level1 <- 0.3 * rnorm(n); level2 <- 0.25 * rnorm(n)
a <- 86.50 + scale * (0.20 * rnorm(n) + 0.15 * u1 - 0.05 * u2) + level1
b <- 86.25 + scale * (0.25 * rnorm(n) + 0.10 * u1 + 0.10 * u2) + level1
c <- 86.00 + scale * (0.30 * rnorm(n) - 0.05 * u1 + 0.20 * u2) + level1
v <- rnorm(n)                                          # session 2: the house's settings, normal
d <- 86.40 + 0.35 * rnorm(n) + 0.10 * v + level2
e <- 85.75 + 0.20 * rnorm(n) + 0.20 * v + level2
x <- cbind(a, b, c, d, e)
place <- sapply(1:5, function(i) 1 + rowSums(x > x[, i]))   # 1 is the highest
cat("best       ", colMeans(place == 1), "\n")
cat("first three", colMeans(place <= 3), "\n")

cat("4. ln(cost) on score (handbook quality.md 5)\n")
score <- c(86.50, 85.25, 84.00, 84.00, 87.50); cost <- c(8.80, 7.60, 6.90, 7.20, 11.50)
h <- lm(log(cost) ~ score)
cat(format(coef(h), digits = 12), summary(h)$r.squared, "\n"); print(resid(h))

cat("5. ln(cost) on score, process and origin\n")
score <- c(84.25, 85.50, 86.00, 87.25, 83.50, 84.75, 86.50, 88.00, 85.00, 86.25)
process <- c("washed", "natural", "washed", "natural", "washed", "washed", "natural", "honey", "honey", "natural")
origin <- c("CO", "CO", "ET", "ET", "CO", "CO", "ET", "ET", "CO", "CO")
cost <- c(6.90, 7.80, 8.40, 9.90, 6.40, 7.20, 8.70, 11.20, 7.40, 8.60)
p <- lm(log(cost) ~ score + process + origin)
new <- data.frame(score = 86, process = "washed", origin = "CO")
cat("n", length(cost), "R2", summary(p)$r.squared, "per point", coef(p)["score"], "predicted", exp(predict(p, new)), "\n")

cat("6. Chance of best of three lots by four cuppers (handbook 4.12), Student's t of the fit (4 million draws, seed 1)\n")
y <- rbind(c(84.25, 82.75, 85.25, 84.00), c(84.75, 82.50, 85.00, 84.75), c(83.00, 82.50, 84.00, 82.75))
rest <- y - outer(rowMeans(y), colMeans(y), "+") + mean(y)
set.seed(1)
scale <- sqrt(6 / rchisq(n, 6)) * sqrt(sum(rest^2) / 6 / 4)
cat(table(max.col(sapply(1:3, function(i) mean(y[i, ]) + rnorm(n) * scale))) / n, "\n")
