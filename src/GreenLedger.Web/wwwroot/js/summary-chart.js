// Draws the charts of summaries and feedback from what the page says of each; the table below has the same figures.
(() => {
  const charts = new Map();

  function tokens() {
    const style = getComputedStyle(document.documentElement);
    const read = name => style.getPropertyValue(name).trim();
    return { ink: read("--ink"), soft: read("--soft"), line: read("--line"), raised: read("--raised"), sans: read("--sans") };
  }

  function figure(data, value) {
    return value == null ? "" : value.toLocaleString("en-GB", { minimumFractionDigits: data.decimals, maximumFractionDigits: data.decimals });
  }

  function common(look) {
    return {
      animation: false,
      textStyle: { fontFamily: look.sans, color: look.ink },
      legend: { top: 0, left: 0, textStyle: { color: look.ink }, itemWidth: 14, itemHeight: 10 },
      tooltip: { renderMode: "richText", confine: true, backgroundColor: look.raised, borderColor: look.soft, textStyle: { color: look.ink, fontSize: 12 } },
    };
  }

  function bars(data, look, isNarrow) {
    const label = { color: look.soft };
    return {
      ...common(look),
      grid: { left: 8, right: 70, top: data.mark ? 50 : 34, bottom: 38, containLabel: true },
      xAxis: {
        type: "value", name: data.valueTitle, nameLocation: "middle", nameGap: 26, nameTextStyle: { color: look.ink },
        splitNumber: isNarrow ? 3 : 6, axisLabel: { ...label, formatter: value => value.toLocaleString("en-GB") }, splitLine: { lineStyle: { color: look.line } },
      },
      yAxis: {
        type: "category", data: data.categories, inverse: true, axisTick: { show: false }, axisLine: { lineStyle: { color: look.soft } },
        axisLabel: { color: look.ink, width: isNarrow ? 90 : 180, overflow: "truncate" },
      },
      series: data.series.map((one, index) => ({
        name: one.name, type: "bar", data: one.values, itemStyle: { color: one.colour }, barGap: "8%",
        label: { show: true, position: "right", color: look.soft, fontSize: 11, formatter: event => figure(data, event.value) },
        tooltip: { valueFormatter: value => figure(data, value) + " " + data.valueTitle },
        markLine: index === 0 && data.mark ? {
          silent: true, symbol: "none", lineStyle: { color: look.ink, type: "dashed" },
          label: { color: look.ink, position: "end", rotate: 0, formatter: data.mark.name + " " + figure(data, data.mark.value) }, data: [{ xAxis: data.mark.value }],
        } : undefined,
      })),
    };
  }

  function radar(data, look) {
    const most = data.most ?? Math.max(...data.series.flatMap(one => one.values));
    return {
      ...common(look),
      radar: {
        indicator: data.categories.map(name => ({ name, min: data.least, max: most })), radius: "62%", center: ["50%", "55%"],
        axisName: { color: look.ink }, splitArea: { show: false }, splitLine: { lineStyle: { color: look.line } }, axisLine: { lineStyle: { color: look.line } },
      },
      series: [{
        type: "radar",
        data: data.series.map(one => ({
          name: one.name, value: one.values, lineStyle: { color: one.colour, width: 2 }, itemStyle: { color: one.colour }, areaStyle: { color: one.colour, opacity: 0.12 },
        })),
      }],
    };
  }

  function lines(data, look, isNarrow) {
    return {
      ...common(look),
      tooltip: { ...common(look).tooltip, trigger: "axis" },
      grid: { left: 8, right: 24, top: 60, bottom: 38, containLabel: true },
      xAxis: { type: "category", data: data.categories, axisLine: { lineStyle: { color: look.soft } }, axisLabel: { color: look.soft, interval: isNarrow ? 12 : 3, hideOverlap: true } },
      yAxis: { type: "value", name: data.valueTitle, nameTextStyle: { color: look.ink }, axisLabel: { color: look.soft }, splitLine: { lineStyle: { color: look.line } } },
      series: data.series.map((one, index) => ({
        name: one.name, type: "line", symbol: "none", data: one.values, itemStyle: { color: one.colour }, lineStyle: { color: one.colour, width: 2, type: index === 0 ? "solid" : "dotted" },
        tooltip: { valueFormatter: value => figure(data, value) + " " + data.valueTitle },
        markLine: index === 0 && data.mark ? {
          silent: true, symbol: "none", lineStyle: { color: look.ink, type: "dashed" },
          label: { color: look.ink, position: "insideEndTop", formatter: data.mark.name + " " + figure(data, data.mark.value) }, data: [{ yAxis: data.mark.value }],
        } : undefined,
      })),
    };
  }

  function draw(box) {
    const data = JSON.parse(box.dataset.spec);
    const look = tokens();
    const chart = charts.get(box) ?? echarts.init(box, null, { renderer: "canvas" });
    if (!charts.has(box)) {
      charts.set(box, chart);
      new ResizeObserver(() => chart.isDisposed() || chart.resize()).observe(box);
    }

    chart.setOption(data.isRadar ? radar(data, look) : (data.isLines ? lines : bars)(data, look, box.clientWidth < 560), true);
  }

  const drawAll = () => document.querySelectorAll("[data-spec]").forEach(draw);
  drawAll();
  window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", drawAll);
})();
