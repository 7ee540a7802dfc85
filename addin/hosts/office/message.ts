/** The page of the small window that says what a button did. */
const place = document.querySelector('#message');
if (place) place.textContent = decodeURIComponent(location.hash.slice(1));
