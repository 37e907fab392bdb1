// Unpacks page and worker from this file into addresses of their own; nothing is fetched. Plain script: an old browser runs it too.
(function () {
  function tell(words) {
    var waiting = document.getElementById('waiting');
    if (waiting) waiting.textContent = words;
  }
  window.addEventListener('error', function () {
    tell(
      'The page could not start in this browser. Try another one, or a window without extensions; the pitwright command gives the same numbers.',
    );
  });
  if (!window.DecompressionStream || !window.structuredClone) {
    tell(
      'This browser is too old for this page: it takes one of 2023 or newer. The pitwright command gives the same numbers.',
    );
    return;
  }
  function unpack(id) {
    var letters = atob(document.getElementById(id).textContent);
    var bytes = new Uint8Array(letters.length);
    for (var i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
    var stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
    return new Response(stream, { headers: { 'content-type': 'text/javascript' } }).blob().then(URL.createObjectURL);
  }
  // the solver starts while the page itself is still being read: the first numbers wait for both
  var solver = unpack('code-solver').then(function (source) {
    try {
      var early = new Worker(source);
      early.onerror = function () {
        early.broken = true;
      };
      window.pitwrightSolver = early;
    } catch {
      // the page finds that out by itself
    }
    return source;
  });
  Promise.all([solver, unpack('code-page'), unpack('code-pictures')]).then(
    function (sources) {
      document.documentElement.dataset.solver = sources[0];
      document.documentElement.dataset.pictures = sources[2];
      var script = document.createElement('script');
      script.src = sources[1];
      script.onerror = function () {
        tell(
          'This browser does not let the page start its script. Another browser may; the command gives the same numbers.',
        );
      };
      document.body.append(script);
    },
    function () {
      tell('This file is damaged: it could not be unpacked. Make it again, or copy it again.');
    },
  );
})();
