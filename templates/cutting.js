// Works the cutting plan of its page. Nothing leaves the page and nothing is kept. The
// plans themselves are given (JSON), made by the same functions as the printed sheet;
// the script only looks one up, draws it and does the sums.
(function () {
  "use strict";
  var given = JSON.parse(document.getElementById("cutting-data").textContent);
  function el(id) { return document.getElementById(id); }

  function local(text) {
    return String(text).replace(".", given.decimal).replace(/[0-9]/g, function (d) {
      return String.fromCodePoint(given.zero + Number(d));
    });
  }
  function fill(words, values) {
    return words.replace(/\{(\w+)\}/g, function (_, k) { return local(values[k]); });
  }
  function percent(tenths) { return local(String(tenths / 10)) + "\u00a0%"; }
  function cm(n) { return fill(given.words.cm, { n: n }); }

  // A number in digits of any script here, with a point, comma or Arabic mark; or NaN.
  function number(text) {
    var zeros = [0x660, 0x6f0, 0x966, 0x9e6, 0xbe6, 0xc66, 0xe50, 0x1040, 0x17e0];
    text = text.trim().replace(/[^\x00-\x7f]/g, function (c) {
      if (c === "\u066b") return ".";
      for (var i = 0; i < zeros.length; i++) {
        var d = c.charCodeAt(0) - zeros[i];
        if (d >= 0 && d <= 9) return String(d);
      }
      return c;
    }).replace(",", ".");
    return /^\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
  }

  // Pieces of a section: a letter, then two digits to the base 36 across and two along;
  // the small letter is a cap that lies across.
  function placed(code) {
    var out = [];
    for (var i = 0; i + 5 <= code.length; i += 5) {
      var letter = code[i].toUpperCase(), size = given.sizes[letter], turned = code[i] !== letter;
      out.push({
        letter: letter, x: parseInt(code.slice(i + 1, i + 3), 36), y: parseInt(code.slice(i + 3, i + 5), 36),
        width: turned ? size[1] : size[0], length: turned ? size[0] : size[1]
      });
    }
    return out;
  }

  function svg(name, attributes, text) {
    var e = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (var k in attributes) e.setAttribute(k, attributes[k]);
    if (text !== undefined) e.textContent = text;
    return e;
  }

  // A stretch of the cloth, whose length runs to the right, as it is printed.
  function draw(section, width, from, to) {
    var s = svg("svg", { viewBox: "-2 -2 " + (to - from + 4) + " " + (width + 12), role: "img", "class": "plan" });
    s.setAttribute("aria-label", fill(given.words.alt, { length: section.length, width: width }));
    placed(section.code).forEach(function (p) {
      var a = Math.max(p.y, from) - from, b = Math.min(p.y + p.length, to) - from, name = given.names[p.letter];
      if (a >= b) return;
      if (p.letter === "B" && p.y >= from && p.y + p.length <= to) {
        s.append(svg("path", { d: given.body, transform: "translate(" + a + " " + p.x + ")", "class": "piece" }));
      } else {
        s.append(svg("rect", { x: a, y: p.x, width: b - a, height: p.width, "class": "piece" }));
      }
      if (b - a > 2.6 * name.length) {
        s.append(svg("text", { x: (a + b) / 2, y: p.x + p.width / 2 + 1.4, "text-anchor": "middle", "font-size": 4 }, name));
      }
    });
    s.append(svg("rect", { x: 0, y: 0, width: to - from, height: width, "class": "cloth" }));
    for (var l = Math.ceil(from / 50) * 50; l <= to; l += 50) {
      s.append(svg("text", { x: l - from, y: width + 7, "text-anchor": "middle", "font-size": 4 }, local(l)));
    }
    return s;
  }

  // As many stretches as keep the words readable, all about as long.
  function stretches(section, width) {
    var n = Math.ceil(section.length / given.band), long = Math.ceil(section.length / n), out = [];
    for (var from = 0; from < section.length; from += long) out.push(draw(section, width, from, Math.min(from + long, section.length)));
    return out;
  }

  function places(section) {
    placed(section.code).forEach(function (p) {
      var row = document.createElement("tr");
      [given.names[p.letter], cm(p.y), cm(p.x), cm(p.length), cm(p.width)].forEach(function (text) {
        var cell = document.createElement("td");
        cell.textContent = text;
        row.append(cell);
      });
      el("cutting-places").append(row);
    });
  }

  function show() {
    var n = number(el("cutting-count").value), width = Number(el("cutting-width").value);
    var plans = given.plans[width + " " + el("cutting-cloth").value], plan = plans[n - 1];
    el("cutting-result").hidden = !plan;
    if (!plan) return;
    var used = 0;
    for (var letter in given.each) used += n * given.each[letter] * given.sizes[letter][0] * given.sizes[letter][1];
    el("cutting-length").textContent = cm(plan.length);
    el("cutting-bound").textContent = cm(plan.bound);
    el("cutting-gap").textContent = percent(Math.ceil(1000 * (plan.length - plan.bound) / plan.bound));
    el("cutting-waste").textContent = percent(Math.round(1000 * (1 - used / (plan.length * width))));
    el("cutting-proved").textContent = plan.length === plan.bound ? given.words.best : fill(given.words.bound, { bound: plan.bound });
    var price = number(el("cutting-price").value);
    el("cutting-cost-row").hidden = !(price > 0);
    el("cutting-cost").textContent = price > 0 ? local((Math.ceil(plan.length / 10) / 10 * price).toFixed(2)) : "";
    var drawings = el("cutting-drawings");
    drawings.replaceChildren();
    el("cutting-places").replaceChildren();
    plan.sections.forEach(function (s) {
      if (plan.sections.length > 1 || s.times > 1) {
        var p = document.createElement("p");
        p.textContent = fill(s.times > 1 ? given.words.section : given.words.once, { carriers: s.carriers, length: s.length, times: s.times });
        drawings.append(p);
      }
      stretches(s, width).forEach(function (drawing) {
        var room = document.createElement("div");
        room.className = "figure chart";
        room.tabIndex = 0;
        room.append(drawing);
        drawings.append(room);
      });
      places(s);
    });
  }

  given.widths.forEach(function (w) {
    var o = document.createElement("option");
    o.value = w;
    o.textContent = cm(w);
    o.selected = w === 90;
    el("cutting-width").append(o);
  });
  ["cutting-count", "cutting-width", "cutting-cloth", "cutting-price"].forEach(function (id) { el(id).addEventListener("input", show); });
  el("cutting-work").hidden = false;
  show();
})();
