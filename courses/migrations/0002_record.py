import uuid

from django.db import migrations, models


def give_handles(apps, schema_editor):
    Person = apps.get_model("courses", "Person")
    for person in Person.objects.only("pk"):
        Person.objects.filter(pk=person.pk).update(handle=uuid.uuid4())


class Migration(migrations.Migration):
    dependencies = [("courses", "0001_people_and_catalogue")]

    operations = [
        migrations.AddField(
            model_name="school", name="independence", field=models.BooleanField(default=False)
        ),
        migrations.AddField(
            model_name="person", name="handle", field=models.UUIDField(null=True, editable=False)
        ),
        migrations.RunPython(give_handles, migrations.RunPython.noop),
        migrations.AlterField(
            model_name="person",
            name="handle",
            field=models.UUIDField(default=uuid.uuid4, editable=False, unique=True),
        ),
    ]
