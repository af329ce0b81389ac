// Comes before the program: opens a newer release that waits whole, and says when a piece of the program has not arrived.
// A script of its own, in words that every browser knows, so that it runs where nothing else does.
;(function () {
  var workers = navigator.serviceWorker
  var failed = false

  /** A browser runs no program of several files from a disk. */
  function tellOfDisk() {
    var place = document.getElementById('start')
    if (!place) return document.addEventListener('DOMContentLoaded', tellOfDisk)
    if (document.documentElement.hasAttribute('data-started')) return
    place.className = 'failed'
    place.setAttribute('role', 'alert')
    place.textContent =
      'This page cannot start from a disk: browsers allow that only to a program that is one file. Open Fieldpair.html, which lies beside it, or start the program with npm start.'
  }

  /** The newer release opens between two visits: now, before anything was done on this page. */
  function openWaiting(registration) {
    if (!registration || !registration.waiting || !registration.active) return
    workers.addEventListener('controllerchange', function () {
      location.reload()
    })
    registration.waiting.postMessage('take over')
  }

  function mend() {
    var controller = workers && workers.controller
    if (controller) {
      var channel = new MessageChannel()
      channel.port1.onmessage = function () {
        location.reload()
      }
      controller.postMessage('mend', [channel.port2])
      return
    }
    // What the browser itself has kept of the pieces may be what is wrong.
    var pieces = document.querySelectorAll('script[src], link[rel="stylesheet"], link[rel="modulepreload"]')
    var addresses = [location.href]
    for (var i = 0; i < pieces.length; i++) addresses.push(pieces[i].src || pieces[i].href)
    Promise.all(
      addresses.map(function (address) {
        return fetch(address, { cache: 'reload' }).catch(function () {})
      }),
    ).then(function () {
      location.reload()
    })
  }

  function tell() {
    var place = document.getElementById('start')
    if (!place) return document.addEventListener('DOMContentLoaded', tell)
    if (failed) return
    failed = true
    place.className = 'failed'
    place.setAttribute('role', 'alert')
    place.textContent =
      'A piece of the program has not arrived whole, so it cannot start. Your plans are kept. Load it anew; if that does not help, try again later or with another network. '
    var button = document.createElement('button')
    button.type = 'button'
    button.textContent = 'Load the program anew'
    button.onclick = mend
    place.appendChild(button)
  }

  // The one-file program bears its script in itself.
  if (location.protocol === 'file:' && document.currentScript.src) {
    failed = true
    tellOfDisk()
  }

  addEventListener(
    'error',
    function (event) {
      if (document.documentElement.hasAttribute('data-started')) return
      var target = event.target
      var isPiece = target && (target.tagName === 'SCRIPT' || /stylesheet|modulepreload/.test(target.rel))
      if (isPiece || event.message) tell()
    },
    true,
  )
  if (workers && location.protocol !== 'file:') workers.getRegistration().then(openWaiting, function () {})
  window.mendProgram = mend
})()
