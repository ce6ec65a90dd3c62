#include "report/html.h"

#include <fmt/format.h>

namespace thinskin::report {
namespace {

std::string css_class(std::string_view css) { return css.empty() ? "" : fmt::format(" class=\"{}\"", css); }

} // namespace

std::string html_heading(int number, std::string_view title) { return fmt::format("<h2><span class=\"no\">{}</span>{}</h2>\n", number, escaped(title)); }

std::string html_paragraph(std::string_view text, std::string_view css) { return text.empty() ? "" : fmt::format("<p{}>{}</p>\n", css_class(css), escaped(text)); }

std::string html_list(const std::vector<std::string>& items)
{
    if (items.empty()) return "";
    std::string s = "<ul>\n";
    for (const std::string& i : items) s += fmt::format("<li>{}</li>\n", escaped(i));
    return s + "</ul>\n";
}

void HtmlTable::row(const std::vector<std::string>& cells, std::string_view data, std::string_view below_html)
{
    body_ += fmt::format("<tbody{}{}><tr>", data.empty() ? "" : " ", data);
    for (std::size_t i = 0; i < columns_.size(); ++i)
        body_ += fmt::format("<td{}>{}</td>", columns_[i].figure ? " class=\"n\"" : "", i < cells.size() ? escaped(cells[i]) : "");
    body_ += "</tr>";
    if (!below_html.empty()) body_ += fmt::format("<tr class=\"below\"><td colspan=\"{}\">{}</td></tr>", columns_.size(), below_html);
    body_ += "</tbody>\n";
}

std::string HtmlTable::html() const
{
    if (body_.empty()) return "";
    std::string s = fmt::format("<table{}><thead><tr>", css_class(css_));
    for (const HtmlColumn& c : columns_) s += fmt::format("<th{}>{}</th>", c.figure ? " class=\"n\"" : "", escaped(c.title));
    return s + "</tr></thead>\n" + body_ + "</table>\n";
}

std::string_view record_style()
{
    return R"(<style>
@page{size:A4;margin:12mm 13mm 14mm;@bottom-right{content:"sheet " counter(page) " of " counter(pages);font:7.5pt sans-serif;color:#444}}
*{box-sizing:border-box}
body{margin:0 auto;padding:6mm 0;max-width:184mm;font:9pt/1.35 'DejaVu Sans','Liberation Sans',Arial,sans-serif;color:#1b1f24;background:#fff}
table{border-collapse:collapse;width:100%;margin:1.5mm 0 3mm}
thead{display:table-header-group}tfoot{display:table-footer-group}
tbody{break-inside:avoid}
th,td{text-align:left;vertical-align:top;padding:.5mm 1.2mm;overflow-wrap:break-word;hyphens:none}
th{font-weight:bold;font-size:7.5pt;border-bottom:.35mm solid #1b1f24}
td{font-size:8pt;border-bottom:.1mm solid #b9bfc6}
.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap;overflow-wrap:normal}
th.n{white-space:normal}
table.sheet,table.sheet>tbody>tr>td,table.sheet>thead>tr>td,table.sheet>tfoot>tr>td{border:0;padding:0;margin:0}
table.sheet>tbody{break-inside:auto}
.running{font-size:7.5pt;color:#444;border-bottom:.1mm solid #444;margin-bottom:3mm;padding-bottom:.5mm;display:flex;justify-content:space-between;gap:6mm}
.foot{font-size:7.5pt;font-weight:bold;border-top:.2mm solid #1b1f24;margin-top:2mm;padding-top:1mm}
h1{font-size:15pt;line-height:1.2;margin:0 0 2mm}
h2{font-size:11pt;margin:5mm 0 1mm;padding-bottom:.6mm;border-bottom:.35mm solid #1b1f24;break-after:avoid}
h3{font-size:9pt;margin:3mm 0 .5mm;break-after:avoid}
.no{display:inline-block;min-width:8mm}
p{margin:1mm 0 1.5mm}ul{margin:1mm 0 2mm;padding-left:5mm}li{margin:.4mm 0}
.small{font-size:7.5pt;color:#3c434b}
.block{border:.35mm solid #1b1f24}
.block td,.block th{border:.18mm solid #1b1f24;padding:.8mm 1.5mm}
.block th{width:24mm;font-weight:normal;font-size:7.5pt;color:#3c434b}
.hash{font-family:'DejaVu Sans Mono','Liberation Mono',monospace;font-size:7pt;overflow-wrap:anywhere}
.fill{display:inline-block;min-width:34mm;border-bottom:.2mm solid #1b1f24;height:4mm}
p.far{font-size:6.5pt;line-height:1.3}
.verdict{border:.7mm solid #1b1f24;padding:2mm 3mm;margin:3mm 0;break-inside:avoid}
.verdict .first{font-size:11.5pt;font-weight:bold;margin:0 0 1mm}
.verdict.fail{border-left-width:3mm;border-color:#8f1d14}.verdict.pass{border-left-width:3mm;border-color:#1d5c8a}
.verdict.open{border-left-width:3mm;border-color:#7a5b00;border-style:double}
.caution{font-weight:bold;border:.35mm solid #1b1f24;padding:1.5mm 3mm;margin:2mm 0}
figure{margin:2mm 0;break-inside:avoid;text-align:center}figure svg{max-width:100%;height:auto}figcaption{text-align:left;font-size:7.5pt;color:#3c434b}
tr.below td{font-size:7pt;color:#3c434b;padding-top:0;padding-left:3mm}
table.two tr:first-child td{border-bottom:0}
tbody.fail td{background:#fbeceb}tbody.fail tr:first-child td{font-weight:bold}
tbody.open td{background:#f8f3e2}
table.fine td,table.fine th{font-size:6.5pt;line-height:1.15;padding-top:.15mm;padding-bottom:.15mm}
table.clauses td,table.clauses th{font-size:7pt;line-height:1.2}
table.values td{font-size:7.5pt}
table.values td:first-child{font-family:'DejaVu Sans Mono','Liberation Mono',monospace;font-size:7pt;width:30%}
table.clauses td:first-child{white-space:nowrap}
table.sign{break-inside:avoid}.sign td{height:11mm;border:.18mm solid #1b1f24}.sign th{border:.18mm solid #1b1f24}
@media print{body{padding:0;max-width:none}}
@media screen{body{padding:8mm 6mm}}
</style>
)";
}

} // namespace thinskin::report
