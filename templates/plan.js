// Shows the cutting plan that is chosen. All plans were worked out before, by the same
// search as the printed sheet; nothing leaves the page and nothing is kept.
(function () {
  "use strict";
  var given = JSON.parse(document.getElementById("plan-data").textContent);
  var SVG = "http://www.w3.org/2000/svg", BAND = 300;
  function el(id) { return document.getElementById(id); }
  function local(text) {
    return String(text).replace(".", given.decimal).replace(/[0-9]/g, function (d) {
      return String.fromCodePoint(given.zero + Number(d));
    });
  }
  function fill(words, values) {
    return words.replace(/\{(\w+)\}/g, function (_, name) { return local(values[name]); });
  }
  function cm(n) { return fill(given.cm, { n: n }); }
  function add(parent, name, text) {
    var e = document.createElement(name);
    if (text !== undefined) e.textContent = text;
    parent.appendChild(e);
    return e;
  }
  function draw(parent, name, attributes, text) {
    var e = document.createElementNS(SVG, name);
    for (var k in attributes) e.setAttribute(k, attributes[k]);
    if (text !== undefined) e.textContent = text;
    parent.appendChild(e);
    return e;
  }

  // The pieces of a section: a letter, two digits across the cloth, two along it.
  function pieces(code) {
    var out = [];
    for (var i = 0; i < code.length; i += 5) {
      var k = "BTCc".indexOf(code[i]), size = given.sizes[Math.min(k, 2)];
      out.push({
        kind: Math.min(k, 2), x: parseInt(code.slice(i + 1, i + 3), 36), y: parseInt(code.slice(i + 3, i + 5), 36),
        width: size[k > 2 ? 1 : 0], length: size[k > 2 ? 0 : 1]
      });
    }
    return out;
  }

  function table(parent, rows) {
    var wide = add(parent, "div"), t, body;
    wide.className = "wide";
    wide.tabIndex = 0;
    t = add(wide, "table");
    t.className = "ruled small";
    rows.forEach(function (row, i) {
      if (i < 2) body = add(t, i ? "tbody" : "thead");
      var tr = add(body, "tr");
      row.forEach(function (cell) {
        var c = add(tr, i ? "td" : "th", cell);
        if (!i) c.scope = "col";
      });
    });
  }

  // One stretch of cloth; its length runs to the right in every language.
  function stretch(parent, placed, width, from, to, alt, id) {
    var box = add(parent, "div"), long = to - from;
    box.className = "figure chart";
    box.tabIndex = 0;
    var svg = draw(box, "svg", { viewBox: "-1 -1 " + (long + 2) + " " + (width + 14), role: "img", "aria-labelledby": id });
    draw(svg, "title", { id: id }, alt);
    placed.forEach(function (p) {
      if (p.y >= to || p.y + p.length <= from) return;
      var a = Math.max(p.y, from) - from, b = Math.min(p.y + p.length, to) - from;
      if (p.kind === 0 && p.y >= from && p.y + p.length <= to) {
        draw(svg, "path", { d: given.body, transform: "translate(" + a + " " + p.x + ")", fill: "none", stroke: "currentColor", "stroke-width": ".6" });
      } else {
        draw(svg, "rect", { x: a, y: p.x, width: b - a, height: p.width, fill: "none", stroke: "currentColor", "stroke-width": ".6" });
      }
      if (b - a >= 3 * given.names[p.kind].length && p.width >= 6) {
        draw(svg, "text", { x: (a + b) / 2, y: p.x + p.width / 2 + 1.6, "font-size": p.width > 6 ? 5.4 : 4.6, "text-anchor": "middle", fill: "currentColor" }, given.names[p.kind]);
      }
    });
    draw(svg, "rect", { x: 0, y: 0, width: long, height: width, fill: "none", stroke: "currentColor", "stroke-width": "1.2" });
    for (var l = Math.ceil(from / 10) * 10; l <= to; l += 10) {
      var tall = l % 50 ? 1.6 : 3.2, x = l - from;
      draw(svg, "path", { d: "M" + x + " " + width + "v" + tall, stroke: "currentColor", "stroke-width": ".5" });
      if (l % 50 === 0) draw(svg, "text", { x: Math.min(Math.max(x, 2), long - 6), y: width + 11, "font-size": 5.4, "text-anchor": "middle", fill: "currentColor" }, local(l));
    }
  }

  function show() {
    var key = el("plan-width").value + " " + el("plan-cloth").value, n = Number(el("plan-count").value);
    var set = given.cloths[key], plan = set.plans[n - 1], out = el("plan-result"), w = given.words;
    out.textContent = "";
    table(out, [
      [w.length, w.bound, w.gap, w.waste],
      [cm(plan.length), cm(plan.bound), local(plan.gap) + "\u00a0%", local(plan.waste) + "\u00a0%"]
    ]);
    add(out, "p", plan.length === plan.bound ? w.best : fill(w.unproved, { bound: plan.bound }));
    var rows = [w.places], number = 0, width = Number(el("plan-width").value);
    plan.sections.forEach(function (s) {
      var placed = pieces(set.sections[s[0]]), long = given.lengths[key][s[0]];
      if (plan.sections.length > 1 || s[1] > 1) {
        add(out, "p").appendChild(add(document.createElement("p"), "strong", fill(s[1] > 1 ? w.section : w.once, { carriers: s[0], length: long, times: s[1] })));
      }
      var bands = Math.ceil(long / BAND), band = Math.ceil(long / bands);
      for (var from = 0; from < long; from += band) {
        stretch(out, placed, width, from, Math.min(from + band, long), fill(w.alt, { length: long, width: width }), "plan-figure-" + ++number);
      }
      placed.forEach(function (p) {
        rows.push([given.names[p.kind], cm(p.y), cm(p.x), cm(p.length), cm(p.width)]);
      });
    });
    var more = add(out, "details");
    add(more, "summary", w.table);
    table(more, rows);
  }

  for (var n = 1; n <= given.most; n++) add(el("plan-count"), "option", local(n)).value = n;
  given.widths.forEach(function (v) { add(el("plan-width"), "option", cm(v)).value = v; });
  el("plan-count").value = 2;
  el("plan-width").value = 90;
  ["plan-count", "plan-width", "plan-cloth"].forEach(function (id) { el(id).addEventListener("change", show); });
  el("plan-work").hidden = false;
  show();
})();
