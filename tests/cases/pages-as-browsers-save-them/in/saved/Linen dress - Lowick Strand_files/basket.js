window.basket={};
