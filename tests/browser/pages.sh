# The pages that are looked at: those of the demo, and ranges at their extremes. Everything invented.
# shellcheck shell=bash

# make_pages PROGRAM ROOT FOLDER: writes them as FOLDER/*.html.
make_pages() {
  local program=$1 root=$2 out=$3 book
  mkdir -p "$out" && "$program" demo --feeds "$root/demo-feeds" --out "$out" >"$out/demo.log" || return
  book=$out/demo.rangebook
  "$program" --book "$book" prices skerrowby --format html --out "$out/prices.html" &&
    "$program" --book "$book" sizes skerrowby --format html --out "$out/sizes.html" &&
    "$program" --book "$book" sizes --reaching 24 --format html --out "$out/reaching.html" &&
    "$program" --book "$book" shop index --format html --out "$out/shops.html" &&
    "$program" --book "$book" history "SK1061" --shop skerrowby --format html --out "$out/history.html" &&
    "$program" --book "$book" revisit ostrel-house --locale de-DE --format html --out "$out/german.html" || return
  extreme_ranges "$out"
  local name
  for name in same one many names; do
    book=$out/$name.rangebook
    rm -f "$book"*
    "$program" --book "$book" shop add "$name" --name "${name^}" --country GB --currency GBP --sizes uk >/dev/null &&
      "$program" --book "$book" capture "$out/$name-then.csv" --shop "$name" --season AW25 --on 2025-09-01 >/dev/null &&
      "$program" --book "$book" capture "$out/$name-now.csv" --shop "$name" --season AW26 --on 2026-09-01 >/dev/null &&
      "$program" --book "$book" revisit "$name" --format html --out "$out/$name.html" || return
  done
}

# extreme_ranges FOLDER: nothing changed, one line, 10,000 lines, names in both directions and of any length.
extreme_ranges() {
  local head=line_code,name,category,colour,size,price,currency
  {
    echo $head
    for i in 1 2 3; do echo "SA$i,Even dress $i,dresses,navy,8-16,49.00,GBP"; done
  } | tee "$1/same-then.csv" >"$1/same-now.csv"
  printf '%s\nON1,Only dress,dresses,navy,8-16,49.00,GBP\n' $head >"$1/one-then.csv"
  printf '%s\nON1,Only dress,dresses,navy,8-20,45.00,GBP\n' $head >"$1/one-now.csv"
  many() {
    awk -v head=$head -v later="$1" 'BEGIN {
      print head
      split("dresses tops knitwear trousers skirts coats", category, " ")
      split("navy ecru black olive rust teal plum", colour, " ")
      for (i = later ? 201 : 1; i <= (later ? 10200 : 10000); ++i) {
        price = 20 + i % 97 + (later && i % 2 ? 3 : 0)
        printf "MA%05d,Invented style number %d,%s,%s,%s,%d.00,GBP\n", i, i, category[i % 6 + 1],
          colour[i % 7 + 1], (later && i % 6 == 1 ? "8-22" : "8-18"), price
      }
    }'
  }
  many 0 >"$1/many-then.csv" && many 1 >"$1/many-now.csv"
  local long
  long=$(printf 'Hand-finished double-breasted wool-blend wrap coat with a belt %.0s' 1 2 3)
  names() {
    echo $head
    echo "NA1,$long,coats,midnight navy,8-18,$1.00,GBP"
    echo "NA2,فستان صوف طويل مع حزام,dresses,أزرق,8-18,$1.00,GBP"
    echo "NA3,שמלת צמר ארוכה עם חגורה,dresses,navy,8-18,$1.00,GBP"
    echo "NA4,$(printf 'Unbroken%.0s' {1..30}),knitwear,navy,8-18,$1.00,GBP"
    echo "NA5,<script>alert(1)</script>,tops,navy,8-18,$1.00,GBP"
    echo "NA6,=cmd|' /C calc'!A0,tops,navy,8-18,$1.00,GBP"
    echo "NA7,長いウールのラップコート,coats,navy,8-18,$1.00,GBP"
    for i in {1..40}; do echo "NB$i,Style $i,Occasion wear for a long name of category $i,navy,8-18,$1.00,GBP"; done
  }
  names 120 >"$1/names-then.csv" && names 135 >"$1/names-now.csv"
}
