// The picture of score against landed cost: hover for the lot, click to open it. The list below says the same in words.
// On a desk, what is not ranked starts unfolded.
(() => {
  const charts = new Map();
  const shapes = [
    "circle",
    "rect",
    "triangle",
    "diamond",
    "path://M4 0h4v4h4v4h-4v4h-4v-4h-4v-4h4z",
    "path://M6 0l1.8 4.1 4.2.4-3.2 2.9 1 4.4-3.8-2.3-3.8 2.3 1-4.4-3.2-2.9 4.2-.4z",
    "emptyCircle",
  ];

  function tokens() {
    const style = getComputedStyle(document.documentElement);
    const read = name => style.getPropertyValue(name).trim();
    return { ink: read("--ink"), soft: read("--soft"), line: read("--line"), raised: read("--raised"), action: read("--action"), sans: read("--sans"), marks: [1, 2, 3, 4, 5, 6].map(n => read("--mark-" + n)) };
  }

  function axis(name, look, decimals) {
    return {
      type: "value",
      scale: true,
      name,
      nameLocation: "middle",
      nameGap: 34,
      nameTextStyle: { color: look.ink },
      axisLabel: { color: look.soft, formatter: value => value.toFixed(decimals) },
      axisLine: { lineStyle: { color: look.soft } },
      splitLine: { lineStyle: { color: look.line } },
    };
  }

  function tip(point, data) {
    return [
      "{b|" + point.ref + "} " + point.name,
      data.series[point.series].word + ", rank " + point.rank + (point.front ? ", on the efficient front" : ""),
      "score " + point.score.toFixed(2) + " (" + point.low.toFixed(2) + " to " + point.high.toFixed(2) + (point.stated ? "), stated" : ", " + point.for + ")"),
      "landed " + point.cost.toFixed(2) + " " + data.currency + "/kg",
      "click to open",
    ].join("\n");
  }

  function series(data, look, isNarrow) {
    const marks = data.series.map((one, index) => ({
      name: one.word,
      type: "scatter",
      symbol: shapes[one.shape],
      itemStyle: { color: look.marks[index] ?? look.ink },
      emphasis: { scale: 1.6 },
      labelLayout: { hideOverlap: true },
      data: data.points.filter(point => point.series === index).map(point => ({
        value: [point.cost, point.score],
        point,
        symbolSize: point.front ? 13 : 9,
        itemStyle: point.front ? { borderColor: look.ink, borderWidth: 1.5 } : {},
        label: { show: point.front && !isNarrow, formatter: point.ref, position: "top", color: look.ink, fontSize: 11 },
      })),
    }));
    const front = {
      name: "efficient front",
      type: "line",
      step: "end",
      symbol: "none",
      silent: true,
      lineStyle: { color: look.action, type: "dashed", width: 2 },
      itemStyle: { color: look.action },
      data: data.front,
    };
    return [front, ...marks];
  }

  function draw(box) {
    const data = JSON.parse(box.dataset.chart);
    const look = tokens();
    const chart = charts.get(box) ?? echarts.init(box, null, { renderer: "canvas" });
    if (!charts.has(box)) {
      charts.set(box, chart);
      chart.on("click", event => {
        if (event.data?.point) {
          window.location.assign(data.open.replace("{id}", event.data.point.id));
        }
      });
      new ResizeObserver(() => chart.isDisposed() || chart.resize()).observe(box);
    }

    const isNarrow = box.clientWidth < 560;
    chart.setOption({
      animation: false,
      textStyle: { fontFamily: look.sans, color: look.ink },
      grid: { left: 62, right: 20, top: isNarrow ? 84 : 56, bottom: 56 },
      legend: { top: 0, left: 0, textStyle: { color: look.ink }, itemWidth: 14, itemHeight: 11 },
      tooltip: {
        trigger: "item",
        renderMode: "richText",
        confine: true,
        backgroundColor: look.raised,
        borderColor: look.soft,
        textStyle: { color: look.ink, fontSize: 12, lineHeight: 18, rich: { b: { fontWeight: "bold" } } },
        formatter: event => event.data?.point ? tip(event.data.point, data) : "",
      },
      xAxis: { ...axis(data.costTitle, look, 2), splitNumber: isNarrow ? 3 : 6 },
      yAxis: { ...axis(data.scoreTitle, look, 1), nameGap: 44 },
      series: series(data, look, isNarrow),
    }, true);
  }

  function drawAll() {
    for (const [box, chart] of charts) {
      if (!box.isConnected) {
        chart.dispose();
        charts.delete(box);
      }
    }

    document.querySelectorAll("[data-chart]").forEach(draw);
    if (window.matchMedia("(min-width: 768px)").matches) {
      document.querySelectorAll("details.below").forEach(below => below.setAttribute("open", ""));
    }
  }

  drawAll();
  document.addEventListener("htmx:afterSwap", drawAll);
  window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", drawAll);
})();
