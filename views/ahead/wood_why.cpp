#include "views/ahead/wood_why.h"

#include "models/domain/answers/answers.h"
#include "models/domain/plan/order_life.h"
#include "models/items/wording.h"
#include "views/ahead/order_what_if.h"
#include "views/ahead/wood_tables.h"
#include "views/records/figure_table.h"
#include "views/records/file_export.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"
#include "views/wood/fan_chart.h"
#include "views/wood/order_sheet.h"
#include "views/wood/wood_words.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;
using domain::WoodAnswer;
using domain::WoodWhatIf;
using domain::WoodWhatIfAnswer;

namespace {

constexpr int kMostRowsShown = 8;

QString crossCheckLine(const domain::ReorderPointCheck &check)
{
    QString words = check.words;
    if (!words.endsWith(QLatin1Char('.')))
        words += QLatin1Char('.');
    return WoodWhy::tr("As a cross-check, the textbook's reorder point: %1 %2")
        .arg(words, check.note)
        .trimmed();
}

} // namespace

WoodWhy::WoodWhy(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_colder(this)
{
    build();
}

void WoodWhy::addPart(const QString &heading, QWidget *part)
{
    m_column->addSpacing(theme(this).space(2));
    m_column->addWidget(new TextLabel(heading, TextStyle::BodyStrong));
    m_column->addWidget(part);
}

void WoodWhy::build()
{
    const Theme &look = theme(this);
    const domain::Wording wording = domain::wordingOf(m_context.books());
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(0, look.space(2), 0, look.space(2));
    m_column->setSpacing(look.space(2));
    m_lines = new TextLabel(QString());
    m_lines->setWordWrap(true);
    m_lines->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_column->addWidget(m_lines);
    m_fan = new FanChart;
    m_fan->setFixedHeight(look.px(280));
    m_column->addWidget(m_fan);
    m_column->addWidget(buildTools());
    m_course = new FigureTable(courseColumns(wording), tr("Dry wood day by day"));
    m_course->hide();
    m_column->addWidget(m_course);
    connect(m_showCourse, &QPushButton::toggled, m_course, &QWidget::setVisible);
    m_whatIf = new OrderWhatIf;
    m_whatIf->setWritable(!m_context.readOnly());
    addPart(tr("What if"), m_whatIf);
    connect(m_whatIf, &OrderWhatIf::answered, this, &WoodWhy::showThoughtUp);
    connect(m_whatIf, &OrderWhatIf::writeAsked, this, &WoodWhy::write);
    m_suppliers = new FigureTable(supplierColumns(), tr("Suppliers compared"));
    m_suppliers->setWidest(240);
    m_supplierPart = new QWidget;
    auto *supplierColumn = new QVBoxLayout(m_supplierPart);
    supplierColumn->setContentsMargins(0, look.space(2), 0, 0);
    supplierColumn->setSpacing(look.space(2));
    supplierColumn->addWidget(
        new TextLabel(tr("Suppliers compared, best first"), TextStyle::BodyStrong));
    supplierColumn->addWidget(m_suppliers);
    auto *key = new TextLabel(
        tr("There: the likely day. Risk: that the event most at risk runs short when it is ordered "
           "by its day; Today: when it is ordered today; Late and Colder: by its day, but it comes "
           "a week late, or every cook is %1 colder. Return on a supplier takes the order into the "
           "sliders above.")
            .arg(wording.metric ? tr("11 °C") : tr("20 °F")),
        TextStyle::Caption, Role::InkMuted);
    key->setWordWrap(true);
    supplierColumn->addWidget(key);
    m_column->addWidget(m_supplierPart);
    connect(m_suppliers, &FigureTable::opened, this, [this](const domain::Link &link) {
        m_whatIf->chooseSource(static_cast<int>(link.id) - 1);
    });
    m_events = new FigureTable(eventColumns(), tr("Events and their chance of running short"));
    m_events->setWidest(320);
    addPart(tr("Every event ahead, and its chance of running short"), m_events);
    connect(m_events, &FigureTable::opened, this, &WoodWhy::opened);
    m_check = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_check->setWordWrap(true);
    m_column->addWidget(m_check);
}

QWidget *WoodWhy::buildTools()
{
    auto *tools = new QWidget;
    auto *row = new QHBoxLayout(tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(theme(this).space(2));
    m_showCourse = new QPushButton(icon(QStringLiteral("table")), tr("Table"));
    m_showCourse->setCheckable(true);
    m_showCourse->setAccessibleName(tr("Show the numbers of the chart"));
    auto *picture = new QPushButton(icon(QStringLiteral("export")), tr("Picture…"));
    picture->setAccessibleName(tr("Export the chart as a picture"));
    auto *numbers = new QPushButton(icon(QStringLiteral("export")), tr("CSV…"));
    numbers->setAccessibleName(tr("Export the numbers of the chart as CSV"));
    for (QPushButton *one : {m_showCourse, picture, numbers}) {
        one->setProperty("role", "quiet");
        row->addWidget(one);
    }
    row->addStretch(1);
    connect(picture, &QPushButton::clicked, this, &WoodWhy::exportPicture);
    connect(numbers, &QPushButton::clicked, this, &WoodWhy::exportNumbers);
    return tools;
}

void WoodWhy::refresh()
{
    m_stale = true;
    if (isVisible())
        fill();
}

void WoodWhy::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        fill();
}

void WoodWhy::fill()
{
    if (!m_context.answers.ready())
        return;
    m_stale = false;
    const WoodAnswer &answer = m_context.answers.answers().wood;
    const domain::Wording wording = domain::wordingOf(m_context.books());
    m_fan->show(m_context.books(), answer);
    m_fan->setVisible(answer.course.size() > 1);
    m_whatIf->setVisible(answer.planner != nullptr);
    if (answer.planner)
        m_whatIf->show(answer, wording);
    const auto suppliers = supplierRows(answer, wording);
    m_suppliers->setRows(suppliers);
    m_supplierPart->setVisible(!suppliers.isEmpty());
    fitToRows(*m_suppliers, kMostRowsShown);
    m_events->setRows(eventRows(answer, {}, wording));
    fitToRows(*m_events, kMostRowsShown);
    m_course->setRows(courseRows(answer, answer.withOrder, wording));
    fitToRows(*m_course, kMostRowsShown);
    QStringList check = answer.notes;
    if (answer.crossCheck.known)
        check.prepend(crossCheckLine(answer.crossCheck));
    m_check->setText(check.join(QLatin1Char('\n')));
    m_check->setVisible(!check.isEmpty());
    showLines({});
    askColder();
}

// Where nothing is proposed the colder cooks are worked out here; else the answer has them.
void WoodWhy::askColder()
{
    const WoodAnswer &answer = m_context.answers.answers().wood;
    m_colder.cancel();
    if (!answer.planner || !answer.orders.isEmpty())
        return;
    WoodWhatIf ask;
    ask.colderKelvin = domain::kColderKelvin;
    const domain::Wording wording = domain::wordingOf(m_context.books());
    m_colder.run<WoodWhatIfAnswer>(
        [answer, ask, wording](LatestWork::Watch &watch) {
            return domain::woodWhatIf(answer, ask, wording,
                                      [&watch] { return watch.cancelled.load(); });
        },
        [this](const WoodWhatIfAnswer &colder) {
            if (!colder.cancelled)
                showLines(colder);
        });
}

void WoodWhy::showLines(const std::optional<WoodWhatIfAnswer> &colder)
{
    m_lines->setText(
        ifLines(m_context.answers.answers().wood, colder, domain::wordingOf(m_context.books()))
            .join(QLatin1Char('\n')));
}

QString WoodWhy::lines() const
{
    return m_lines->text();
}

void WoodWhy::showThoughtUp()
{
    const WoodAnswer &answer = m_context.answers.answers().wood;
    const WoodWhatIf asked = m_whatIf->asked();
    const WoodWhatIfAnswer &result = m_whatIf->result();
    const bool thought = asked.source >= 0 || asked.colderKelvin != 0;
    m_fan->showOrder(thought ? result.course : QVector<domain::StockPoint>{},
                     asked.source >= 0 ? asked.orderDay : QDate(),
                     m_whatIf->atProposal() ? tr("with the order proposed")
                     : asked.source >= 0    ? tr("with the order of the sliders")
                                            : tr("with cooks so much colder"),
                     result.risks);
    const domain::Wording wording = domain::wordingOf(m_context.books());
    m_events->setRows(eventRows(answer, result.risks, wording));
    if (m_course->isVisible())
        m_course->setRows(courseRows(answer, result.course, wording));
}

void WoodWhy::write(int source, int units)
{
    const WoodAnswer &answer = m_context.answers.answers().wood;
    const domain::WoodSource from = answer.sources.value(source);
    const domain::Books &books = m_context.books();
    domain::WoodOrder order = draftOf(books, from.supplier, from.species, units,
                                      items::toLocal(books, m_context.verbs.now()).date());
    order.unit = from.unit;
    if (from.price)
        order.price = *from.price * units + from.delivery.value_or(domain::Money());
    const auto done = m_context.verbs.draftOrder(order);
    if (!done) {
        m_context.refuse(done.problems());
        return;
    }
    m_context.say(tr("The order is a draft now: send it from here. Undo takes it back."));
    Q_EMIT opened({TableId::WoodOrder, done.value()});
}

void WoodWhy::exportPicture()
{
    askAndExport(m_context, this,
                 {tr("Export the fan of dry wood"), QStringLiteral("dry-wood.png"),
                  tr("Pictures (*.png *.svg)")},
                 [this](const QString &path) { return m_fan->exportPicture(path); });
}

void WoodWhy::exportNumbers()
{
    const WoodAnswer &answer = m_context.answers.answers().wood;
    const QVector<domain::StockPoint> with =
        m_whatIf->asked().source >= 0 ? m_whatIf->result().course : answer.withOrder;
    askAndExport(m_context, this,
                 {tr("Export the numbers of dry wood"), QStringLiteral("dry-wood.csv"),
                  tr("Comma-separated (*.csv)")},
                 [&](const QString &path) { return writeFile(path, courseCsv(answer, with)); });
}

} // namespace rickyard::views
