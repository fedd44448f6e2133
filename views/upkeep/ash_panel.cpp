#include "views/upkeep/ash_panel.h"

#include "models/domain/upkeep/ash.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/records/field_editor.h"
#include "views/records/record_list.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

QVector<AshCan> ashCans(const Books &books, Instant now)
{
    QMap<QString, AshCan> byName;
    for (const AshState &state : ashStates(books, now, LocalTime(books.yard().timeZone))) {
        if (state.tipped)
            continue;
        AshCan &can = byName[state.can.simplified().toLower()];
        if (can.loads.isEmpty())
            can.name = state.can;
        can.loads << books.ashLoads.value(state.load);
        can.notBefore = std::max(can.notBefore, state.notBefore);
        can.waiting = can.waiting || state.waiting;
    }
    QVector<AshCan> cans = byName.values();
    std::stable_sort(cans.begin(), cans.end(),
                     [](const AshCan &a, const AshCan &b) { return a.notBefore < b.notBefore; });
    return cans;
}

AshPanel::AshPanel(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(4));
    auto *both = new QHBoxLayout;
    both->setSpacing(look.space(6));
    auto *left = new QVBoxLayout;
    left->setSpacing(look.space(3));
    left->addWidget(new TextLabel(tr("Cans that hold ash"), TextStyle::Heading, Role::Ink, this));
    m_cans = new QVBoxLayout;
    m_cans->setSpacing(look.space(2));
    left->addLayout(m_cans);
    left->addWidget(new CautionNote(cautionWithoutClosing(ashCaution()), this));
    left->addStretch(1);
    both->addLayout(left, 3);
    auto *right = new QVBoxLayout;
    right->setSpacing(look.space(2));
    m_notice = new NoticeBar(this);
    m_takeOut = buildTakeOut();
    m_tip = buildTip();
    m_tip->hide();
    right->addWidget(m_takeOut);
    right->addWidget(m_tip);
    right->addWidget(m_notice);
    right->addStretch(1);
    both->addLayout(right, 2);
    column->addLayout(both);
    m_list = new RecordList(context, TableId::AshLoad, QStringLiteral("ash-can"),
                            tr("Every load of ash with its can and its time stands here."), this);
    m_list->addedBy([this] { startTakingOut(0); });
    m_list->sortBy(QStringLiteral("taken_out"), Qt::DescendingOrder);
    column->addWidget(m_list, 1);
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::AshLoad) || changes.touches(TableId::Pit))
                    refresh();
            });
    refresh();
}

FieldRow *AshPanel::addField(QVBoxLayout *column, const QString &key, const QString &label)
{
    const TableSpec &spec = specOf(TableId::AshLoad);
    FieldSpec field = spec.fields.at(spec.indexOf(key));
    field.required = field.required || key == QLatin1String("tipped");
    FieldEditor *editor = makeEditor(
        field, [this]() -> const Books & { return m_context.books(); }, this);
    auto *row = new FieldRow(label, editor, this);
    editor->inner()->setAccessibleName(label);
    connect(editor, &FieldEditor::edited, row, &FieldRow::clearProblem);
    m_editors.insert(key, editor);
    m_rows.insert(key, row);
    column->addWidget(row);
    return row;
}

QWidget *AshPanel::buildTakeOut()
{
    const Theme &look = theme(this);
    auto *form = new QWidget(this);
    auto *column = new QVBoxLayout(form);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(new TextLabel(tr("Ash taken out"), TextStyle::Heading, Role::Ink, form));
    m_pit = new QComboBox(form);
    m_pit->setAccessibleName(tr("From pit"));
    m_rows.insert(QStringLiteral("pit"), new FieldRow(tr("From pit"), m_pit, form));
    m_can = new QComboBox(form);
    m_can->setEditable(true);
    m_can->setInsertPolicy(QComboBox::NoInsert);
    m_can->setAccessibleName(tr("Into can"));
    m_can->lineEdit()->setAccessibleName(tr("Into can"));
    m_rows.insert(QStringLiteral("can"), new FieldRow(tr("Into can"), m_can, form));
    connect(m_can, &QComboBox::editTextChanged, m_rows.value(QStringLiteral("can")),
            &FieldRow::clearProblem);
    auto *pair = new QHBoxLayout;
    pair->setSpacing(look.space(3));
    pair->addWidget(m_rows.value(QStringLiteral("pit")), 1);
    pair->addWidget(m_rows.value(QStringLiteral("can")), 1);
    column->addLayout(pair);
    m_inPit = new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, form);
    m_inPit->setWordWrap(true);
    column->addWidget(m_inPit);
    connect(m_pit, &QComboBox::currentIndexChanged, this, &AshPanel::showInPit);
    addField(column, QStringLiteral("taken_out"), tr("When"));
    connect(m_editors.value(QStringLiteral("taken_out")), &FieldEditor::edited, this,
            [this] { m_timeTyped = true; });
    m_takeOutButton = new QPushButton(tr("Ash taken out"), form);
    m_takeOutButton->setAccessibleName(tr("Record the ash taken out"));
    connect(m_takeOutButton, &QPushButton::clicked, this, &AshPanel::takeOut);
    column->addWidget(m_takeOutButton, 0, Qt::AlignLeft);
    return form;
}

QWidget *AshPanel::buildTip()
{
    const Theme &look = theme(this);
    auto *form = new QWidget(this);
    auto *column = new QVBoxLayout(form);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_tipHead = new TextLabel(QString(), TextStyle::Heading, Role::Ink, form);
    column->addWidget(m_tipHead);
    addField(column, QStringLiteral("tipped_where"), tr("Where"));
    addField(column, QStringLiteral("tipped"), tr("When"));
    connect(m_editors.value(QStringLiteral("tipped")), &FieldEditor::edited, this,
            [this] { m_early = false; });
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(look.space(2));
    m_tipButton = new QPushButton(tr("Tipped"), form);
    m_tipButton->setProperty("role", "primary");
    m_tipButton->setAccessibleName(tr("Record the can as tipped"));
    connect(m_tipButton, &QPushButton::clicked, this, &AshPanel::tip);
    auto *cancel = new QPushButton(tr("Cancel"), form);
    cancel->setProperty("role", "quiet");
    cancel->setAccessibleName(tr("Cancel"));
    connect(cancel, &QPushButton::clicked, this, [this] {
        m_notice->dismiss();
        m_tip->hide();
        m_takeOut->show();
    });
    buttons->addWidget(m_tipButton);
    buttons->addWidget(cancel);
    buttons->addStretch(1);
    column->addLayout(buttons);
    return form;
}

void AshPanel::refresh()
{
    const Books &books = m_context.books();
    const QVariant pit = m_pit->currentData();
    m_pit->clear();
    for (const Pit &one : books.pits)
        if (!one.retired)
            m_pit->addItem(one.name, one.id);
    m_pit->setCurrentIndex(std::max(0, m_pit->findData(pit)));
    // Cans by their last use.
    QStringList names;
    QVector<AshLoad> loads = books.ashLoads.values();
    std::stable_sort(loads.begin(), loads.end(),
                     [](const AshLoad &a, const AshLoad &b) { return a.takenOut > b.takenOut; });
    for (const AshLoad &load : std::as_const(loads))
        if (!names.contains(load.can, Qt::CaseInsensitive))
            names << load.can;
    const QString typed = m_can->currentText();
    m_can->clear();
    m_can->addItems(names);
    m_can->setEditText(typed);
    if (!m_timeTyped)
        m_editors.value(QStringLiteral("taken_out"))->setValue(toValue(m_context.verbs.now()));
    m_takeOutButton->setEnabled(!m_context.readOnly() && m_pit->count() > 0);
    showCans();
    showInPit();
}

void AshPanel::showInPit()
{
    const RecordId pit = m_pit->currentData().toLongLong();
    QString text;
    if (pit != 0 && m_context.answers.ready()) {
        const Books &books = m_context.books();
        text = ashInPit(books, m_context.answers.answers().fuel, pit, m_context.verbs.now(),
                        LocalTime(books.yard().timeZone))
                   .words;
        text[0] = text.at(0).toUpper();
    }
    m_inPit->setText(text);
}

void AshPanel::showCans()
{
    const Theme &look = theme(this);
    clearLayout(m_cans);
    m_words.clear();
    const Books &books = m_context.books();
    const QLocale locale(QStringLiteral("en_US"));
    const Instant now = m_context.verbs.now();
    const QVector<AshCan> cans = ashCans(books, now);
    for (const AshCan &can : cans) {
        QStringList from;
        for (const AshLoad &load : can.loads)
            from << tr("%1, %2").arg(books.pits.value(load.pit).name,
                                     items::timeText(books, load.takenOut, locale));
        const QString until = items::timeText(books, can.notBefore, locale);
        const QString state = can.waiting ? tr("Not to be tipped before %1").arg(until)
                                          : tr("96 hours were over %1").arg(until);
        m_words
            << QStringLiteral("%1: %2. %3").arg(can.name, from.join(QStringLiteral("; ")), state);
        auto *line = new QWidget(this);
        auto *row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(look.space(3));
        auto *names = new QVBoxLayout;
        names->setSpacing(look.px(2));
        names->addWidget(new TextLabel(can.name, TextStyle::BodyStrong, Role::Ink, line));
        auto *loads = new TextLabel(tr("From %1").arg(from.join(QStringLiteral("; "))),
                                    TextStyle::Caption, Role::InkMuted, line);
        loads->setWordWrap(true);
        names->addWidget(loads);
        row->addLayout(names, 1);
        row->addWidget(new StatusPill(can.waiting ? Role::Watch : Role::Info, state, line));
        auto *tipped = new QPushButton(tr("Tipped…"), line);
        tipped->setAccessibleName(tr("Tipped: %1").arg(can.name));
        tipped->setEnabled(!m_context.readOnly());
        const QString name = can.name;
        connect(tipped, &QPushButton::clicked, this, [this, name] { startTipping(name); });
        row->addWidget(tipped);
        m_cans->addWidget(line);
    }
    if (cans.isEmpty()) {
        auto *none = new TextLabel(tr("No can holds ash by the books."), TextStyle::Body,
                                   Role::InkMuted, this);
        m_cans->addWidget(none);
    }
}

void AshPanel::startTakingOut(RecordId pit)
{
    m_tip->hide();
    m_takeOut->show();
    m_notice->dismiss();
    m_pit->setCurrentIndex(std::max(0, m_pit->findData(pit)));
    m_can->setFocus(Qt::OtherFocusReason);
}

bool AshPanel::takeOut()
{
    m_notice->dismiss();
    AshLoad load;
    load.pit = m_pit->currentData().toLongLong();
    load.can = m_can->currentText();
    if (m_timeTyped)
        fromValue(m_editors.value(QStringLiteral("taken_out"))->typed().value, load.takenOut);
    const auto added = commands::takeOutAsh(m_context.verbs, load);
    if (!added) {
        showProblems(added.problems());
        return false;
    }
    m_timeTyped = false;
    refresh();
    const AshLoad kept = m_context.books().ashLoads.value(added.value());
    m_context.say(tr("Kept: ash in %1. Not to be tipped before %2.")
                      .arg(kept.can, items::timeText(m_context.books(), kept.takenOut + kAshCooling,
                                                     QLocale(QStringLiteral("en_US")))));
    return true;
}

void AshPanel::startTipping(const QString &can)
{
    m_tipping = can;
    m_early = false;
    m_notice->dismiss();
    m_tipHead->setText(tr("Tipped: %1").arg(can));
    m_tipButton->setText(tr("Tipped"));
    m_editors.value(QStringLiteral("tipped"))->setValue(toValue(m_context.verbs.now()));
    m_editors.value(QStringLiteral("tipped_where"))->setValue(Value());
    for (const char *key : {"tipped", "tipped_where"})
        m_rows.value(QString::fromLatin1(key))->clearProblem();
    m_takeOut->hide();
    m_tip->show();
    where()->inner()->setFocus(Qt::OtherFocusReason);
}

bool AshPanel::tip()
{
    m_notice->dismiss();
    Instant at;
    fromValue(m_editors.value(QStringLiteral("tipped"))->typed().value, at);
    const auto done =
        commands::tipAsh(m_context.verbs, m_tipping, textOf(where()->typed().value), at, m_early);
    if (!done) {
        showProblems(done.problems());
        // Too early is told once; what has happened can be recorded all the same.
        const Problems problems = done.problems();
        m_early = problems.size() == 1 && problems.first().field == QLatin1String("tipped") &&
                  at <= m_context.verbs.now();
        if (m_early)
            m_tipButton->setText(tr("It was tipped all the same"));
        return false;
    }
    m_tip->hide();
    m_takeOut->show();
    m_context.say(tr("%1 is tipped. Undo takes it back.").arg(m_tipping));
    return true;
}

void AshPanel::showProblems(const Problems &problems)
{
    QStringList others;
    for (const Problem &problem : problems) {
        if (FieldRow *row = m_rows.value(problem.field))
            row->setProblem(problem.message);
        else
            others << problem.message;
    }
    if (!others.isEmpty())
        m_notice->showProblem(others.join(QLatin1Char('\n')));
}

QStringList AshPanel::canWords() const
{
    return m_words;
}

} // namespace rickyard::views
