#include "views/events/load_list_view.h"

#include "views/events/load_list_words.h"
#include "views/reports/paper_view.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/scroll_column.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr double kChances[] = {0.80, 0.90, 0.95, 0.99};
const QString kChanceKey = QStringLiteral("loadList/chance");

} // namespace

void openLoadList(PageContext &context, const Link &about, QWidget *parent)
{
    auto *view = new LoadListView(context, about, parent);
    view->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(view, &LoadListView::opened, view, [view, &context](const Link &link) {
        view->close();
        context.open(link);
    });
    view->show();
}

LoadListView::LoadListView(PageContext &pageContext, const Link &about, QWidget *parent)
    : QDialog(parent), m_context(pageContext), m_about(about)
{
    m_ticks = m_context.settings.value(settingsKey()).toStringList();
    build();
    connect(&m_context.answers, &workspace::AnswersService::updated, this, &LoadListView::refresh);
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::Weather))
                    m_weather.reset();
            });
    refresh();
}

QString LoadListView::settingsKey() const
{
    return QStringLiteral("loadList/%1-%2/ticked").arg(specOf(m_about.table).key).arg(m_about.id);
}

void LoadListView::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(5));
    outer->setSpacing(look.space(3));
    m_title = new TextLabel(QString(), TextStyle::Title, Role::Ink);
    m_title->setWordWrap(true);
    outer->addWidget(m_title);
    m_subtitle = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_subtitle->setWordWrap(true);
    outer->addWidget(m_subtitle);
    m_chance = new QComboBox(this);
    const double kept = m_context.settings.value(kChanceKey, kUsualLoadChance).toDouble();
    for (const double chance : kChances) {
        m_chance->addItem(LoadWords::chanceWords(chance), chance);
        if (qFuzzyCompare(chance, kept))
            m_chance->setCurrentIndex(m_chance->count() - 1);
    }
    connect(m_chance, &QComboBox::currentIndexChanged, this, [this] {
        m_context.settings.setValue(kChanceKey, chance());
        refresh();
    });
    auto *chance = new FieldRow(tr("The wood is to be enough for"), m_chance, this);
    outer->addWidget(chance);
    m_amount = new SentenceLabel(this);
    m_amount->setStyles(TextStyle::Heading, TextStyle::NumeralLarge);
    outer->addWidget(m_amount);
    m_column = addScrollColumn(outer, this, look.space(2));
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(3));
    m_done = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    row->addWidget(m_done, 1);
    const auto act = [&](const QString &text, const QString &name, auto slot) {
        auto *button = new QPushButton(text, this);
        button->setAccessibleName(name);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, slot);
        row->addWidget(button);
    };
    act(tr("Untick all"), tr("Untick every line"), [this] {
        for (QCheckBox *box : std::as_const(m_boxes))
            box->setChecked(false);
    });
    act(tr("Print …"), tr("The load list on paper"), [this] { print(); });
    act(tr("Close"), tr("Close the load list"), [this] { close(); });
    outer->addLayout(row);
    resize(look.px(720), look.px(720));
}

double LoadListView::chance() const
{
    return m_chance->currentData().toDouble();
}

void LoadListView::refresh()
{
    clearLayout(m_column);
    m_boxes.clear();
    m_said.clear();
    m_sheet.reset();
    if (!m_context.answers.ready()) {
        m_title->setText(tr("Load list"));
        m_amount->setParts({{tr("Working it out …"), false, Role::Ink}});
        return;
    }
    const Books &books = m_context.books();
    if (!m_weather)
        m_weather.emplace(books);
    const auto sheet = loadSheet(books, m_context.answers.answers(), *m_weather,
                                 m_context.verbs.now(), m_about, chance());
    if (!sheet) {
        m_title->setText(tr("Load list"));
        m_subtitle->clear();
        m_amount->setParts({{sheet.message(), false, Role::Ink}});
        m_said << sheet.message();
        m_column->addStretch(1);
        followTicks();
        return;
    }
    m_sheet = sheet.value();
    showSheet();
    m_column->addStretch(1);
    followTicks();
}

void LoadListView::showSheet()
{
    const LoadWords words(m_context.books(), *m_sheet);
    setWindowTitle(words.title());
    m_title->setText(words.title());
    m_subtitle->setText(words.subtitle());
    m_amount->setParts({{tr("Pull "), false, Role::Ink},
                        {words.amount(), true, Role::Ink},
                        {QStringLiteral("."), false, Role::Ink}});
    m_said << words.title() << words.amount();
    showShortage(words);
    showBars(words);
    for (const LoadGroup &group : words.groups())
        showGroup(group);
    showTrailer(words);
    addText(tr("Rests on"), TextStyle::Heading, Role::Ink);
    for (const QString &note : words.notes())
        addText(note, TextStyle::Body, Role::InkMuted);
}

void LoadListView::addText(const QString &text, TextStyle style, Role role)
{
    if (text.isEmpty())
        return;
    if (style == TextStyle::Heading)
        m_column->addSpacing(theme(this).space(3));
    auto *label = new TextLabel(text, style, role, this);
    label->setWordWrap(true);
    m_column->addWidget(label);
    m_said << text;
}

void LoadListView::showShortage(const LoadWords &words)
{
    const QString missing = words.shortage();
    if (missing.isEmpty())
        return;
    m_column->addWidget(new StatusPill(Role::Act, tr("Wood is short"), this), 0, Qt::AlignLeft);
    addText(missing, TextStyle::Body, Role::Ink);
}

void LoadListView::showBars(const LoadWords &words)
{
    for (const LoadBar &bar : m_sheet->bars) {
        auto *line = new QWidget(this);
        auto *row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(theme(this).space(3));
        row->addWidget(new StatusPill(LoadWords::barRole(bar),
                                      bar.towing ? tr("Not to be towed") : tr("Not to be lit"),
                                      line),
                       0, Qt::AlignTop);
        auto *text = new TextLabel(words.bar(bar), TextStyle::Body, Role::Ink, line);
        text->setWordWrap(true);
        row->addWidget(text, 1);
        auto *open = new QPushButton(tr("Open"), line);
        open->setProperty("role", "quiet");
        open->setAutoDefault(false);
        open->setAccessibleName(tr("Open the task: %1").arg(words.bar(bar)));
        connect(open, &QPushButton::clicked, this, [this, task = bar.block.task] {
            Q_EMIT opened(Link{TableId::UpkeepTask, task});
        });
        row->addWidget(open, 0, Qt::AlignTop);
        m_column->addWidget(line);
        m_said << words.bar(bar);
    }
}

void LoadListView::showGroup(const LoadGroup &group)
{
    const Theme &look = theme(this);
    addText(group.heading, TextStyle::Heading, Role::Ink);
    if (group.rows.isEmpty()) {
        addText(tr("There is no dry wood to pull."), TextStyle::Body, Role::InkMuted);
        return;
    }
    auto *table = new QWidget(this);
    auto *grid = new QGridLayout(table);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(look.space(4));
    grid->setVerticalSpacing(look.space(1));
    grid->setColumnStretch(0, 1);
    // The same columns in every group.
    grid->setColumnMinimumWidth(1, look.px(96));
    for (int column = 2; column <= 4; ++column)
        grid->setColumnMinimumWidth(column, look.px(68));
    for (int i = 0; i < group.rows.size(); ++i) {
        const LoadRow &row = group.rows.at(i);
        auto *box = new QCheckBox(row.what, table);
        box->setAccessibleName(row.line());
        box->setChecked(m_ticks.contains(row.key));
        box->setMinimumHeight(look.rowHeight());
        connect(box, &QCheckBox::toggled, this, [this, key = row.key](bool on) { tick(key, on); });
        m_boxes << box;
        grid->addWidget(box, i, 0);
        auto *place = new TextLabel(row.place, TextStyle::Body, Role::InkMuted, table);
        place->setWordWrap(true);
        grid->addWidget(place, i, 1);
        int column = 2;
        for (const QString &figure : {row.splits, row.weight, row.boxes})
            grid->addWidget(new TextLabel(figure, TextStyle::Figures, Role::Ink, table), i,
                            column++, Qt::AlignRight | Qt::AlignVCenter);
        m_said << row.line();
    }
    m_column->addWidget(table);
}

void LoadListView::showTrailer(const LoadWords &words)
{
    if (!m_sheet->towed)
        return;
    addText(tr("Trailer"), TextStyle::Heading, Role::Ink);
    const auto over = m_sheet->trailer.over();
    if (over)
        m_column->addWidget(
            new StatusPill(*over > Mass() ? Role::Act : Role::Info,
                           *over > Mass() ? tr("Too heavy") : tr("Under the limit entered"), this),
            0, Qt::AlignLeft);
    addText(words.trailerVerdict(), TextStyle::Body, Role::Ink);
    for (const QString &line : words.trailer())
        addText(line, TextStyle::Body, Role::InkMuted);
    m_column->addWidget(new CautionNote(LoadWords::towingCaution(), this));
}

void LoadListView::tick(const QString &key, bool on)
{
    m_ticks.removeAll(key);
    if (on)
        m_ticks << key;
    m_context.settings.setValue(settingsKey(), m_ticks);
    followTicks();
}

int LoadListView::ticked() const
{
    int on = 0;
    for (const QCheckBox *box : m_boxes)
        on += box->isChecked() ? 1 : 0;
    return on;
}

void LoadListView::followTicks()
{
    m_done->setText(m_boxes.isEmpty() ? QString()
                    : ticked() == m_boxes.size()
                        ? tr("All %1 lines loaded").arg(m_boxes.size())
                        : tr("%1 of %2 lines loaded").arg(ticked()).arg(m_boxes.size()));
}

QString LoadListView::plainText() const
{
    return m_said.join(QLatin1Char('\n'));
}

std::optional<Paper> LoadListView::paper() const
{
    if (!m_sheet)
        return {};
    return LoadWords(m_context.books(), *m_sheet).paper();
}

void LoadListView::print()
{
    const auto sheet = paper();
    if (!sheet)
        return;
    PaperView view(*sheet, this);
    view.exec();
}

} // namespace rickyard::views
