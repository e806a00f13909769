// Works the growth charts of its page. Nothing leaves the page and nothing is kept.
// What it is given (JSON, made from the same functions as the printed chart): for each
// measure, mean and standard deviation at every day of age, where the axes of each chart
// lie, and the words. Weight in kg and length are taken by their natural logarithm.
(function () {
  "use strict";
  var given = JSON.parse(document.getElementById("growth-data").textContent);
  var DAY = 86400000, COLUMNS = ["date", "weight-g", "length-cm", "head-cm"];
  function el(id) { return document.getElementById(id); }

  // Digits of any script that languages here are written in, and the Arabic decimal mark.
  var zeros = [0x660, 0x6f0, 0x966, 0x9e6, 0xbe6, 0xc66, 0xe50, 0x1040, 0x17e0];
  function european(text) {
    return text.replace(/[^\x00-\x7f]/g, function (c) {
      if (c === "\u066b") return ".";
      if (c === "\u060c") return ",";
      for (var i = 0; i < zeros.length; i++) {
        var d = c.charCodeAt(0) - zeros[i];
        if (d >= 0 && d <= 9) return String(d);
      }
      return c;
    });
  }
  function local(text) {
    return String(text).replace(".", given.decimal).replace(/[0-9]/g, function (d) {
      return String.fromCodePoint(given.zero + Number(d));
    });
  }
  function fill(words, n) { return words.replace("{n}", local(n)); }

  // A date as days since 1970, or NaN when there is no such day.
  function day(text) {
    var m = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text.trim());
    if (!m) return NaN;
    var t = Date.UTC(+m[1], +m[2] - 1, +m[3]);
    return new Date(t).toISOString().slice(0, 10) === m[0] ? t / DAY : NaN;
  }
  function number(text) { return /^\d+(\.\d+)?$/.test(text) ? Number(text) : NaN; }

  function z(measure, sex, age, value) {
    var m = given.measures[measure], i = age - given.first;
    return ((m.log ? Math.log(value) : value) - m.mean[i] - (sex === "boy" ? m.boy : 0)) / m.sd[i];
  }

  function baby() {
    var sex = document.querySelector("input[name=growth-sex]:checked");
    var b = {
      born: day(el("growth-born").value), weeks: Number(el("growth-weeks").value),
      days: Number(el("growth-days").value || 0), sex: sex ? sex.value : ""
    };
    var whole = Number.isInteger(b.weeks) && Number.isInteger(b.days);
    return b.sex && b.born === b.born && whole && b.weeks >= 22 && b.weeks <= 44 && b.days >= 0 && b.days <= 6 ? b : null;
  }

  // The rows of the text that can be plotted, by date; what is wrong with the others is said.
  function rows(b, wrong) {
    var columns = COLUMNS, out = [], seen = {};
    european(el("growth-rows").value).split(/\r?\n/).forEach(function (line, i) {
      if (!line.replace(/[\s,]/g, "")) return;
      var cells = line.replace(/"/g, "").split(",").map(function (c) { return c.trim(); });
      if (cells.indexOf("date") >= 0) { columns = cells; return; }
      var row = { values: {} }, bad = cells.length > columns.length;
      cells.forEach(function (c, k) {
        if (columns[k] === "date") row.day = day(c);
        else if (c && COLUMNS.indexOf(columns[k]) < 0) bad = true;
        else if (c) {
          var v = number(c);
          if (!(v > 0)) bad = true;
          row.values[columns[k]] = v;
        }
      });
      if (bad || row.day === undefined || row.day !== row.day || !Object.keys(row.values).length) { wrong.push(fill(given.unread, i + 1)); return; }
      row.age = b.weeks * 7 + b.days + row.day - b.born;
      if (row.day < b.born || row.age < given.first || row.age > given.last || seen[row.day]) { wrong.push(fill(given.outside, i + 1)); return; }
      row.z = {};
      var far = false;
      COLUMNS.slice(1).forEach(function (c) {
        if (!row.values[c]) return;
        row.z[c] = z(c, b.sex, row.age, c === "weight-g" ? row.values[c] / 1000 : row.values[c]);
        if (Math.abs(row.z[c]) > given.absurd) far = true;
      });
      if (far) { wrong.push(fill(given.far, i + 1)); return; }
      seen[row.day] = true;
      out.push(row);
    });
    return out.sort(function (a, b) { return a.day - b.day; });
  }

  // Gains, and the marks they and losses are given, by the rules of the printed sheet.
  function course(b, points) {
    var l = given.limits, birth = Number(european(el("growth-birth-weight").value)) || 0;
    if (!birth && points.length && points[0].day === b.born) birth = points[0].values["weight-g"] || 0;
    var kg = birth / 1000, most = 0, early = l.VerySmallLossDays, words = given.marks, very = kg < l.SmallLow;
    if (birth && kg <= l.SmallHigh) {
      most = very ? l.VerySmallLoss : l.SmallLoss;
      if (!very) early = l.SmallLossDays;
    }
    var lowest = -1;
    points.forEach(function (p, i) {
      var w = p.values["weight-g"];
      if (w && p.day - b.born <= early && (lowest < 0 || w < points[lowest].values["weight-g"])) lowest = i;
    });
    points.forEach(function (p, i) {
      var now = p.values["weight-g"];
      p.marks = [];
      if (!now) return;
      for (var k = i - 1; k >= 0; k--) {
        var before = points[k].values["weight-g"], days = p.day - points[k].day;
        if (!before || days < Math.max(l.GainDays, 1)) continue;
        p.gain = 1000 * (now - before) / days / ((now + before) / 2);
        if (k >= Math.max(lowest, 0) && p.gain < l.LeastGain && p.age <= l.GainUntil) p.marks.push(words.gain);
        break;
      }
      if (!birth) return;
      if (most && (birth - now) / birth * 100 > most) p.marks.push(very ? words.veryLoss : words.loss);
      if (l.RegainDays && p.day - b.born >= l.RegainDays && now < birth) p.marks.push(words.back);
    });
  }

  function signed(v, decimals) {
    var text = v.toFixed(decimals);
    if (Number(text) === 0) return local((0).toFixed(decimals));
    // The sign stands at the left of its number in every language: an isolate (UAX #9).
    return "\u2066" + local((v > 0 ? "+" : "\u2212") + text.replace("-", "")) + "\u2069";
  }

  function svg(name, attributes) {
    var e = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (var k in attributes) e.setAttribute(k, attributes[k]);
    return e;
  }

  function plot(b, points) {
    given.charts.forEach(function (c) {
      var own = b && c.sex === b.sex && points.some(function (p) { return p.values[c.measure]; });
      el(c.section).hidden = Boolean(b) && !own;
      var drawing = el(c.figure).ownerSVGElement, old = drawing.querySelector("g.points");
      if (old) old.remove();
      if (!own) return;
      var g = svg("g", { "class": "points" }), line = [];
      points.forEach(function (p) {
        var v = p.values[c.measure];
        if (!v) return;
        if (c.measure === "weight-g") v /= 1000;
        var x = c.left + (p.age - given.first) / (given.last - given.first) * (c.right - c.left);
        var y = c.bottom - (v - c.low) / (c.high - c.low) * (c.bottom - c.top);
        line.push(x.toFixed(2) + "," + y.toFixed(2));
        g.appendChild(svg("circle", { cx: x.toFixed(2), cy: y.toFixed(2), r: 0.95, fill: "#1f1d1a", stroke: "#fff", "stroke-width": 0.3 }));
      });
      g.insertBefore(svg("polyline", { points: line.join(" "), fill: "none", stroke: "#1f1d1a", "stroke-width": 0.2 }), g.firstChild);
      drawing.appendChild(g);
    });
  }

  function cell(row, name, text, dir) {
    var e = document.createElement(name), inner = e;
    if (name === "th") e.scope = "row";
    if (dir) {
      inner = e.appendChild(document.createElement("bdi"));
      inner.dir = dir;
      e.className = "end";
    }
    inner.textContent = text;
    row.appendChild(e);
  }

  function table(points) {
    var body = el("growth-body");
    body.textContent = "";
    points.forEach(function (p) {
      var tr = document.createElement("tr");
      cell(tr, "th", new Date(p.day * DAY).toISOString().slice(0, 10), "ltr"); // as it is written in the rows
      cell(tr, "td", local(Math.floor(p.age / 7) + " + " + p.age % 7), document.documentElement.dir);
      COLUMNS.slice(1).forEach(function (c) {
        if (!p.values[c]) { cell(tr, "td", ""); return; }
        cell(tr, "td", local(p.values[c]) + " (" + signed(p.z[c], 2) + ")", document.documentElement.dir);
      });
      cell(tr, "td", p.gain === undefined ? "" : signed(p.gain, 1), document.documentElement.dir);
      cell(tr, "td", p.marks.join("; "));
      body.appendChild(tr);
    });
    el("growth-results").hidden = !points.length;
  }

  function work() {
    var b = baby(), wrong = [], points = [];
    if (!b) wrong.push(given.missing);
    else course(b, points = rows(b, wrong));
    var list = el("growth-wrong");
    list.textContent = "";
    wrong.forEach(function (w) { list.appendChild(document.createElement("li")).textContent = w; });
    plot(points.length ? b : null, points);
    table(points);
  }

  el("growth-add").addEventListener("click", function () {
    var cells = ["growth-date", "growth-weight", "growth-length", "growth-head"].map(function (id) {
      var value = el(id).value.trim();
      el(id).value = "";
      return value;
    });
    var area = el("growth-rows");
    area.value = area.value.replace(/\s*$/, "") + (area.value.trim() ? "\n" : "") + cells.join(",") + "\n";
    work();
    el("growth-date").focus();
  });
  el("growth-plot").addEventListener("click", work);
  el("growth-work").hidden = false;
})();
