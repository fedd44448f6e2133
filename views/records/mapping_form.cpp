#include "views/records/mapping_form.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/widgets/utc_offset.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace rickyard::views {

using exchange::TimeZoneKind;

MappingForm::MappingForm(QWidget *parent) : QWidget(parent) {}

QComboBox *MappingForm::box(const QString &name, const QStringList &choices, int chars)
{
    auto *made = new QComboBox;
    made->setAccessibleName(name);
    made->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    made->setMinimumContentsLength(chars);
    made->addItems(choices);
    connect(made, &QComboBox::activated, this, &MappingForm::changed);
    return made;
}

FieldRow *MappingForm::row(const QString &key, const QString &label, QWidget *editor)
{
    auto *made = new FieldRow(label, editor);
    m_rows.insert(key, made);
    if (auto *line = qobject_cast<QLineEdit *>(editor)) {
        line->setAccessibleName(label);
        connect(line, &QLineEdit::textEdited, this, &MappingForm::changed);
    }
    return made;
}

void MappingForm::choose(QComboBox *one, const QString &column)
{
    int at = column.isEmpty() ? 0 : one->findData(column);
    if (at < 0) {
        one->addItem(tr("%1 (not there)").arg(column), column);
        at = one->count() - 1;
    }
    one->setCurrentIndex(at);
}

void MappingForm::fillColumns(QComboBox *one, const QString &none, const QStringList &header)
{
    one->clear();
    one->addItem(none, QString());
    for (qsizetype i = 0; i < header.size(); ++i) {
        const QString name = header.at(i).trimmed();
        one->addItem(name.isEmpty() ? tr("Column %1").arg(i + 1) : name, header.at(i));
    }
}

void MappingForm::buildLayout(QVBoxLayout *column, int headerLines, const QString &missing,
                              const QString &missingHelp)
{
    column->addWidget(new TextLabel(tr("How the file is written"), TextStyle::BodyStrong));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(theme(this).space(3));
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    m_separator = box(tr("Separator"));
    m_separator->addItem(tr("Comma"), QStringLiteral(","));
    m_separator->addItem(tr("Semicolon"), QStringLiteral(";"));
    m_separator->addItem(tr("Tab"), QStringLiteral("\t"));
    m_separator->addItem(tr("Bar |"), QStringLiteral("|"));
    m_decimal = box(tr("Decimal sign"));
    m_decimal->addItem(tr("Point 1.5"), QStringLiteral("."));
    m_decimal->addItem(tr("Comma 1,5"), QStringLiteral(","));
    m_headerRow = box(tr("Headers"));
    m_headerRow->addItem(tr("None"), 0);
    for (int i = 1; i <= headerLines; ++i)
        m_headerRow->addItem(tr("In line %1").arg(i), i);
    m_missing = new QLineEdit;
    grid->addWidget(row(QStringLiteral("separator"), tr("Separator"), m_separator), 0, 0);
    grid->addWidget(row(QStringLiteral("decimal"), tr("Decimal sign"), m_decimal), 0, 1);
    grid->addWidget(row(QStringLiteral("headerLine"), tr("Headers"), m_headerRow), 1, 0);
    FieldRow *marks = row(QStringLiteral("missing"), missing, m_missing);
    marks->setHelp(missingHelp);
    grid->addWidget(marks, 2, 0, 1, 2);
    column->addLayout(grid);
    for (QComboBox *one : {m_separator, m_headerRow})
        connect(one, &QComboBox::activated, this, &MappingForm::layoutChanged);
}

void MappingForm::makeZone()
{
    m_zoneKind =
        box(tr("Time zone of the file"), {tr("UTC"), tr("Zone by name"), tr("Fixed offset")});
    m_zone = new QLineEdit;
}

TimeZoneKind MappingForm::zoneKind() const
{
    return static_cast<TimeZoneKind>(m_zoneKind->currentIndex());
}

void MappingForm::showZoneHint()
{
    m_zone->setPlaceholderText(zoneKind() == TimeZoneKind::Zone ? tr("America/Chicago")
                                                                : tr("-06:00"));
}

void MappingForm::pick(QComboBox *box, const QVariant &data)
{
    box->setCurrentIndex(qMax(0, box->findData(data)));
}

QString MappingForm::zoneText(TimeZoneKind kind, int offsetSeconds, const QString &zone)
{
    return kind == TimeZoneKind::FixedOffset ? utcOffsetText(offsetSeconds) : zone;
}

std::optional<int> MappingForm::offset() const
{
    return utcOffsetOf(m_zone->text());
}

bool MappingForm::showElsewhere(const domain::Problem &)
{
    return false;
}

QStringList MappingForm::showProblems(const domain::Problems &problems)
{
    for (FieldRow *one : std::as_const(m_rows))
        one->clearProblem();
    clearElsewhere();
    QStringList elsewhere;
    for (const domain::Problem &problem : problems) {
        if (FieldRow *one = m_rows.value(problem.field))
            one->setProblem(problem.message);
        else if (!showElsewhere(problem))
            elsewhere << problem.message;
    }
    if (zoneKind() == TimeZoneKind::FixedOffset && !offset())
        m_rows.value(QStringLiteral("zone"))
            ->setProblem(tr("Expected an offset from UTC such as -06:00."));
    return elsewhere;
}

} // namespace rickyard::views
