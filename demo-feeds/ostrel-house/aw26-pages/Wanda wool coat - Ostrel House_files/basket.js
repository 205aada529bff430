window.basket = { items: 0 };
